using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.History;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.People;

public sealed class ErasePersonTests
{
    private const string Name = "Quilla Overwater";
    private const string Phone = "+43 660 7788991";
    private const string Mail = "quilla@overwater.example";

    [Fact]
    public async Task After_erasing_no_word_of_the_person_is_left_in_the_file_and_the_trail_still_fits()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PersonView person = await AwayAsync(house);
        Assert.NotEmpty(await FoundAsync(house));

        PersonErased erased = (await EraseAsync(house, house.Vet, person)).Value;

        Assert.False(erased.NameKept);
        Assert.Equal(3, erased.Lines);
        Assert.Empty(await FoundAsync(house));
        Assert.Null((await house.VerifyAsync()).FirstBreak);
        PersonView after = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, person.Id)).Value;
        Assert.Equal(("Erased person", null, null), (after.Name, after.Phone, after.Mail));
        TrailPage trail = (await house.Get<GetTrail>().ExecuteAsync(house.Vet, new TrailFilter())).Value;
        Assert.Equal(3, trail.Lines.Count(line => line.IsErased));
    }

    [Fact]
    public async Task What_somebody_signs_in_with_is_taken_out_and_erased_with_them()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor trainer = await house.PersonAsync(Name, Role.Trainer);
        string hash = new('a', 64);
        await house.Get<InvitePerson>().ExecuteAsync(house.Vet, new InvitePersonInput(Guid.NewGuid(), trainer.PersonId, hash, false));
        Assert.True((await house.Get<InvitationDoor>().UseAsync(hash, new AccountChoice(Mail, "no hash"))).Succeeded);
        await house.Get<SessionDoor>().BeginAsync(trainer, "Firefox, Android", isDemo: false);

        using JsonDocument file = JsonDocument.Parse((await house.Get<ExportPerson>().ExecuteAsync(house.Vet, trainer.PersonId)).Value);
        Assert.Equal(Mail, file.RootElement.GetProperty("signsInWith").GetProperty("signInName").GetString());
        Assert.Equal("Firefox, Android", file.RootElement.GetProperty("sessions")[0].GetProperty("browser").GetString());

        await EraseAsync(house, house.Vet, await ArchivedAsync(house, trainer.PersonId));

        Assert.Empty(await FoundAsync(house));
        Assert.Null(await house.Get<AccountStore>().OfAsync(trainer.PersonId));
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Theory]
    [InlineData("utf-8")]
    [InlineData("latin1")]
    public async Task A_file_that_was_handed_in_and_names_them_goes_and_another_stays(string encoding)
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await StageAsync(house, Encoding.GetEncoding(encoding).GetBytes($"größe;{Name}\n"));
        await StageAsync(house, "case;somebody else\n"u8.ToArray());
        PersonView person = await AwayAsync(house);

        await EraseAsync(house, house.Vet, person);

        Assert.Empty(await FoundAsync(house));
        Assert.Equal(1, await house.LookAsync(records => records.ImportFiles.IgnoreQueryFilters().CountAsync()));
    }

    [Fact]
    public async Task A_person_who_still_counts_is_not_erased()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved saved = await SaveAsync(house, Role.Owner);

        Outcome<PersonErased> refused = await house
            .Get<ErasePerson>()
            .ExecuteAsync(house.Vet, new ErasePersonInput(Guid.NewGuid(), saved.Id, saved.Version, "Erased person"));

        Assert.Equal("erase-not-put-away", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task A_name_under_a_signature_stays_and_the_rest_goes()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved saved = await SaveAsync(house, Role.Vet);
        Actor vet = new(house.Vet.PracticeId, saved.Id, Role.Vet, Name);
        Saved injury = await house.CaseAsync((await house.HorseAsync()).Id);
        await house.LookAsync(async records =>
        {
            records.Enter(house.Vet.PracticeId, new Writer(vet.PersonId, DateTime.UnixEpoch, Guid.NewGuid(), "Test"));
            await using var transaction = await records.Database.BeginTransactionAsync();
            records.Examinations.Add(
                new ExaminationRecord
                {
                    Id = Guid.NewGuid(),
                    CaseId = injury.Id,
                    Date = new DateOnly(2026, 6, 1),
                    State = ExaminationState.Signed,
                    SignedById = vet.PersonId,
                    SignedAt = DateTime.UnixEpoch,
                    WrittenAt = DateTime.UnixEpoch,
                }
            );
            await records.SaveChangesAsync();
            await transaction.CommitAsync();
            return true;
        });
        PersonView person = await ArchivedAsync(house, saved.Id);

        PersonErased erased = (await EraseAsync(house, house.Vet, person)).Value;

        PersonView after = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, person.Id)).Value;
        Assert.True(erased.NameKept);
        Assert.Equal((Name, null, null), (after.Name, after.Phone, after.Mail));
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    [Fact]
    public async Task What_is_held_of_a_person_is_taken_out_and_that_is_noted()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Saved saved = await SaveAsync(house, Role.Owner);

        string json = (await house.Get<ExportPerson>().ExecuteAsync(house.Vet, saved.Id)).Value;

        using JsonDocument file = JsonDocument.Parse(json);
        JsonElement person = file.RootElement.GetProperty("person");
        Assert.Equal((Name, Mail), (person.GetProperty("name").GetString(), person.GetProperty("mail").GetString()));
        Assert.Equal("SavePerson", file.RootElement.GetProperty("saidOfThem")[0].GetProperty("useCase").GetString());
        ChangeRecord note = (await house.LinesAsync())[^1];
        Assert.Equal(("Access", "ExportPerson", saved.Id), (note.Kind, note.UseCase, note.RecordId));
    }

    [Fact]
    public async Task Notes_of_access_go_when_they_were_kept_long_enough_and_the_trail_still_fits()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house.Get<AccessBook>().NoteAsync(house.Vet.PracticeId, house.Vet.PersonId, AccessEvent.SignedIn, "from the yard");
        house.Time.Advance(TimeSpan.FromDays(729));
        await house.Get<AccessBook>().NoteAsync(house.Vet.PracticeId, house.Vet.PersonId, AccessEvent.SignedIn);
        Assert.Equal(0, await house.Get<ForgetOldWords>().RunAsync());
        house.Time.Advance(TimeSpan.FromDays(2));

        Assert.Equal(1, await house.Get<ForgetOldWords>().RunAsync());
        Assert.Equal(0, await house.Get<ForgetOldWords>().RunAsync());

        Assert.Equal(
            ["", """{"event":"SignedIn"}"""],
            (await house.LinesAsync()).Where(line => line.Kind == "Access").Select(line => line.AfterJson)
        );
        Assert.Null((await house.VerifyAsync()).FirstBreak);
    }

    private static Task<Saved> SaveAsync(RecordsHouse house, Role role) => house.AddAsync(Name, role, Phone, Mail);

    private static Task<Outcome<Saved>> StageAsync(RecordsHouse house, byte[] content) =>
        house.Get<StageImportFile>().ExecuteAsync(house.Vet, new StageImportFileInput(Guid.NewGuid(), "past.csv", content));

    private static async Task<PersonView> AwayAsync(RecordsHouse house) =>
        await ArchivedAsync(house, (await SaveAsync(house, Role.Owner)).Id);

    private static async Task<PersonView> ArchivedAsync(RecordsHouse house, Guid id)
    {
        PersonView person = (await house.Get<GetPerson>().ExecuteAsync(house.Vet, id)).Value;
        Assert.True(
            (await house.Get<ArchivePerson>().ExecuteAsync(house.Vet, new RecordInput(Guid.NewGuid(), id, person.Version))).Succeeded
        );
        return (await house.Get<GetPerson>().ExecuteAsync(house.Vet, id)).Value;
    }

    private static Task<Outcome<PersonErased>> EraseAsync(RecordsHouse house, Actor actor, PersonView person) =>
        house.Get<ErasePerson>().ExecuteAsync(actor, new ErasePersonInput(Guid.NewGuid(), person.Id, person.Version, "Erased person"));

    /// <summary>Which of the person's words can be read in the files as they lie on the disk.</summary>
    private static async Task<string[]> FoundAsync(RecordsHouse house)
    {
        await house.LookAsync(records => records.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)"));
        string content = string.Concat(
            Directory
                .EnumerateFiles(house.Folder, "rehabtrack.db*")
                .Where(file => !file.EndsWith("-shm", StringComparison.Ordinal))
                .Select(Read)
        );
        return
        [
            .. new[] { Name, Folded.Of(Name), Phone, Mail, SignInAccount.Fold(Mail) }.Where(word =>
                content.Contains(word, StringComparison.Ordinal)
            ),
        ];
    }

    private static string Read(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using StreamReader reader = new(file, Encoding.Latin1);
        return reader.ReadToEnd();
    }
}
