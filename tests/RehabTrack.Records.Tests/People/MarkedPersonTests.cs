using System.Text;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.History;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.People;

/// <summary>A trainer of whom everything that can be held is held, under words that stand nowhere else.</summary>
public sealed class MarkedPersonTests
{
    private const string FirstName = "Xanthe Wyverdale";
    private const string Name = "Xanthe O\"Quorn";
    private const string FirstMail = "first@xanthe.example";
    private const string Mail = "second@xanthe.example";
    private const string FirstPhone = "+43 660 1122334";
    private const string Phone = "+43 660 5566778";
    private const string SignInName = "xanthe-signs-in";
    private const string Browser = "Xanthes Browser";
    private static readonly DateOnly Today = ExerciseHouse.Today;

    private static readonly string[] Marks =
    [
        FirstName,
        Name,
        Name.Replace("\"", "\\\"", StringComparison.Ordinal),
        Folded.Of(FirstName),
        Folded.Of(Name),
        FirstMail,
        Mail,
        FirstPhone,
        Phone,
        SignInName,
        SignInAccount.Fold(SignInName),
    ];

    [Fact]
    public async Task After_erasing_no_cell_of_any_table_and_no_byte_of_the_file_holds_name_address_or_number_of_today_or_before()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Held held = await FillAsync(at);
        string[] before = Cells(at.House.Database);
        Assert.All(
            Marks.Except([Name, Folded.Of(FirstName)]),
            mark => Assert.Contains(before, cell => cell.Contains(mark, StringComparison.Ordinal))
        );

        Outcome<PersonErased> erased = await EraseAsync(at.House, held.Person);

        Assert.Empty(erased.Problems);
        Assert.False(erased.Value.NameKept);
        Assert.Empty(Found(at.House.Database));
        await at.House.LookAsync(records => records.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)"));
        string bytes = await BytesAsync(at.House.Database);
        Assert.DoesNotContain(Marks, mark => bytes.Contains(mark, StringComparison.Ordinal));
    }

    [Fact]
    public async Task After_erasing_the_horses_record_stands_and_the_trail_fits()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Held held = await FillAsync(at);
        ExerciseView exercise = await ViewAsync(at.House, held.Horse);

        await EraseAsync(at.House, held.Person);

        ExerciseView after = await ViewAsync(at.House, held.Horse);
        Assert.Equal(exercise.Lines.Select(line => line.Id), after.Lines.Select(line => line.Id));
        Assert.Contains(after.Lines, line => line.EnteredBy == "Erased person");
        CallRow call = await at.House.LookAsync(async records =>
            await records.Calls.Where(one => one.PersonId == held.Person).Select(one => new CallRow(one.Outcome, one.Words)).SingleAsync()
        );
        Assert.Equal(new CallRow(CallOutcome.Spoke, null), call);
        string?[] others = await at.House.LookAsync(records =>
            records.Calls.Where(one => one.PersonId == null).Select(one => one.Words).ToArrayAsync()
        );
        Assert.Equal("the groom of Erased person says yes", Assert.Single(others));
        Assert.Null((await at.House.VerifyAsync()).FirstBreak);
        Assert.Equal(
            [],
            (await RecordsCheck.FolderAsync(at.House.Folder, null, default)).Problems.Select(problem =>
                $"{problem.Code} {string.Join(' ', problem.Arguments)}"
            )
        );
    }

    [Fact]
    public async Task A_command_whose_answer_was_erased_stays_done_and_a_repeat_is_told_so()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Held held = await FillAsync(at);
        await EraseAsync(at.House, held.Person);

        Outcome<BegunReminder> repeated = await at.House.Get<BeginReminder>().ExecuteAsync(at.House.Vet, held.Letter);

        Assert.Equal("answer-erased", Assert.Single(repeated.Problems).Code);
        Assert.Equal(2, await at.House.LookAsync(records => records.Reminders.CountAsync(letter => letter.PersonId == held.Person)));
    }

    [Fact]
    public async Task Words_that_only_look_like_a_part_of_the_name_are_left_as_they_are()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Saved saved = await at.House.AddAsync("Ann", Role.Owner);
        await at
            .House.Get<NoteCall>()
            .ExecuteAsync(at.House.Vet, new NoteCallInput(Guid.NewGuid(), at.Case, CallOutcome.Spoke, null, "Anna: ann, at noon"));

        await EraseAsync(at.House, saved.Id);

        Assert.Equal(
            "Anna: Erased person, at noon",
            await at.House.LookAsync(records => records.Calls.Select(call => call.Words).SingleAsync())
        );
    }

    [Fact]
    public async Task Taken_out_is_all_that_is_held()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Held held = await FillAsync(at);

        string json = (await at.House.Get<ExportPerson>().ExecuteAsync(at.House.Vet, held.Person)).Value;

        using JsonDocument file = JsonDocument.Parse(json);
        JsonElement all = file.RootElement;
        Assert.Equal([Name, Phone, Mail], Texts(all.GetProperty("person"), "name", "phone", "mail"));
        Assert.Equal([SignInName], Texts(all.GetProperty("signsInWith"), "signInName"));
        Assert.Equal([Browser], Texts(all.GetProperty("sessions")[0], "browser"));
        Assert.NotEqual(JsonValueKind.Null, all.GetProperty("invitations")[0].GetProperty("usedAt").ValueKind);
        Assert.Equal(["Larkspur", "Trainer"], Texts(all.GetProperty("horses")[0], "name", "relation"));
        Assert.Equal(["Larkspur", "ReferringVet"], Texts(all.GetProperty("horses")[1], "name", "relation"));
        Assert.Equal(["Trainer"], Texts(all.GetProperty("links")[0], "relation"));
        Assert.Equal(["Larkspur"], Texts(all.GetProperty("reports")[0], "horse"));
        Assert.Equal([FirstMail, "Begun"], Texts(all.GetProperty("letters")[0], "mail", "state"));
        Assert.Equal(["Spoke", $"told {Mail} to come"], Texts(all.GetProperty("calls")[0], "outcome", "words"));
        Assert.Equal(["Larkspur"], Texts(all.GetProperty("looksAtPermits")[0], "horse"));
        string[] said = [.. all.GetProperty("saidOfThem").EnumerateArray().SelectMany(line => Texts(line, "useCase"))];
        Assert.Equal(["SavePerson", "SavePerson"], said.Where(useCase => useCase == nameof(SavePerson)));
        Assert.Contains(FirstMail, all.GetProperty("saidOfThem").GetRawText(), StringComparison.Ordinal);
        string[] done = [.. all.GetProperty("doneByThem").EnumerateArray().SelectMany(line => Texts(line, "useCase"))];
        Assert.Contains(nameof(ReportConcern), done);
        Assert.Contains(nameof(LogDay), done);
    }

    private static async Task<Held> FillAsync(ExerciseHouse at)
    {
        RecordsHouse house = at.House;
        // A report goes to a referring vet, who became the trainer later.
        Guid person = (await house.AddAsync(FirstName, Role.ReferringVet, FirstPhone, FirstMail)).Id;
        Guid horse = Done(
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Larkspur",
                        TrainerId = person,
                        ReferringVetId = person,
                    }
                )
        ).Id;
        Guid injury = (await house.CaseAsync(horse)).Id;
        await house.SignedAsync(injury, Wishes.Content(Today.AddDays(-61), (10, 0), (12, 0.5)));
        BeginReminderInput letter = new(Guid.NewGuid(), injury, person, Again: false);
        Done(await house.Get<BeginReminder>().ExecuteAsync(house.Vet, letter));
        Done(
            await house.Get<ReleaseReport>().ExecuteAsync(house.Vet, new ReleaseReportInput(Guid.NewGuid(), injury, person, "with thanks"))
        );
        PersonView view = Done(await house.Get<GetPerson>().ExecuteAsync(house.Vet, person));
        Done(
            await house
                .Get<SavePerson>()
                .ExecuteAsync(
                    house.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = person,
                        Version = view.Version,
                        Name = Name,
                        Role = Role.Trainer,
                        Phone = Phone,
                        Mail = Mail,
                        CanSignIn = true,
                    }
                )
        );
        string hash = new('a', 64);
        Done(await house.Get<InvitePerson>().ExecuteAsync(house.Vet, new InvitePersonInput(Guid.NewGuid(), person, hash, false)));
        Assert.True((await house.Get<InvitationDoor>().UseAsync(hash, new AccountChoice(SignInName, "no hash"))).Succeeded);
        Actor trainer = new(house.Vet.PracticeId, person, Role.Trainer, Name);
        await house.Get<SessionDoor>().BeginAsync(trainer, Browser, isDemo: false);
        Done(await house.Get<BeginReminder>().ExecuteAsync(house.Vet, letter with { CommandId = Guid.NewGuid(), Again = true }));
        NoteCall note = house.Get<NoteCall>();
        Done(
            await note.ExecuteAsync(house.Vet, new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.Spoke, person, $"told {Mail} to come"))
        );
        Done(
            await note.ExecuteAsync(
                house.Vet,
                new NoteCallInput(Guid.NewGuid(), injury, CallOutcome.Spoke, null, $"the groom of {FirstName} says yes")
            )
        );
        Done(
            await house
                .Get<RenewShare>()
                .ExecuteAsync(
                    house.Vet,
                    new RenewShareInput
                    {
                        CommandId = Guid.NewGuid(),
                        PersonId = person,
                        Relation = HorseRelation.Trainer,
                        SecretHash = new string('b', 64),
                    }
                )
        );
        Done(await house.Get<NoteLook>().ExecuteAsync(trainer, new NoteLookInput(Guid.NewGuid(), [horse])));
        Done(await house.Get<ReportConcern>().ExecuteAsync(trainer, new ReportConcernInput(Guid.NewGuid(), horse, "warm behind")));
        Done(
            await house
                .Get<LogDay>()
                .ExecuteAsync(
                    trainer,
                    new LogDayInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse,
                        Log = new DayLog { Date = Today, Done = new OutingMinutes(10) },
                    }
                )
        );
        Done(
            await house
                .Get<KeepTyped>()
                .ExecuteAsync(
                    house.Vet,
                    new KeepTypedInput(
                        Guid.NewGuid(),
                        at.Horse,
                        TypedForm.Decision,
                        new Dictionary<string, string?>(StringComparer.Ordinal) { ["reason"] = $"{Name} asked for it, write to {Mail}" }
                    )
                )
        );
        Guid draft = (await house.CaseAsync(horse)).Id;
        SavedDraft saved = await house.DraftAsync(draft, Wishes.Content(Today, (10, 0)));
        Done(
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.NewGuid(),
                        Id = saved.Id,
                        Version = saved.Version,
                        Content = Wishes.Content(Today, (10, 0)),
                        Typed = JsonSerializer.Serialize(new { note = $"ring {FirstPhone}" }),
                    }
                )
        );
        return new Held(person, horse, letter);
    }

    private static async Task<ExerciseView> ViewAsync(RecordsHouse house, Guid horse) =>
        (await house.Get<GetExercise>().ExecuteAsync(house.Vet, horse)).Value;

    private static T Done<T>(Outcome<T> outcome)
    {
        Assert.Empty(outcome.Problems);
        return outcome.Value;
    }

    private static async Task<Outcome<PersonErased>> EraseAsync(RecordsHouse house, Guid id)
    {
        PersonView person = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, id)).Value;
        Saved away = Done(await house.Get<ArchivePerson>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), id, person.Version)));
        return await house
            .Get<ErasePerson>()
            .ExecuteAsync(house.Vet, new ErasePersonInput(Guid.NewGuid(), id, away.Version, "Erased person"));
    }

    private static IEnumerable<string> Texts(JsonElement of, params string[] names) =>
        names.Select(name => of.GetProperty(name).GetString() ?? "");

    private static string[] Found(string database) =>
        [
            .. Cells(database)
                .Where(cell => Marks.Any(mark => cell.Contains(mark, StringComparison.OrdinalIgnoreCase)))
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>Every cell of every table, with its place; what is no text is read as Latin letters.</summary>
    private static string[] Cells(string database)
    {
        using SqliteConnection connection = new($"Data Source={database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        List<string> tables = [];
        using (SqliteCommand names = connection.CreateCommand())
        {
            names.CommandText = "SELECT name FROM sqlite_master WHERE type = 'table'";
            using SqliteDataReader rows = names.ExecuteReader();
            while (rows.Read())
            {
                tables.Add(rows.GetString(0));
            }
        }

        List<string> cells = [];
        foreach (string table in tables)
        {
            using SqliteCommand all = connection.CreateCommand();
            all.CommandText = $"SELECT * FROM \"{table}\"";
            using SqliteDataReader rows = all.ExecuteReader();
            while (rows.Read())
            {
                for (int column = 0; column < rows.FieldCount; column++)
                {
                    string? text = rows.GetValue(column) switch
                    {
                        string words => words,
                        byte[] bytes => Encoding.Latin1.GetString(bytes),
                        _ => null,
                    };
                    if (text is not null)
                    {
                        cells.Add($"{table}.{rows.GetName(column)}: {text}");
                    }
                }
            }
        }

        return [.. cells];
    }

    private static async Task<string> BytesAsync(string database)
    {
        StringBuilder all = new();
        foreach (string path in new[] { database, database + "-wal" }.Where(File.Exists))
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using StreamReader reader = new(file, Encoding.Latin1);
            all.Append(await reader.ReadToEndAsync());
        }

        return all.ToString();
    }

    private sealed record Held(Guid Person, Guid Horse, BeginReminderInput Letter);

    private sealed record CallRow(CallOutcome Outcome, string? Words);
}
