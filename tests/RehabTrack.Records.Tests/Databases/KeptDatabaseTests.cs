using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Links;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.History;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Databases;

/// <summary>Every earlier schema is opened and migrated by the present version.</summary>
public sealed class KeptDatabaseTests
{
    private const string MakeVariable = "REHABTRACK_MAKE_DATABASE";

    public static TheoryData<string> Names => ["issue-a", "issue-b", "issue-c", "issue-d"];

    private static string Folder => Path.Combine(Path.GetDirectoryName(Files.Seed)!, "tests", "RehabTrack.Records.Tests", "Databases");

    /// <summary>The file of a kept database; it is copied, never opened.</summary>
    internal static string FileOf(string name) => Path.Combine(Folder, $"{name}.db");

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_kept_database_is_migrated_and_read_by_this_version(string name)
    {
        await MakeWhenAskedAsync();
        using KeptCopy copy = new(name);
        await using RecordsHouse house = await RecordsHouse.BuildAsync(copy.Folder);
        await house.Get<RenewSummaries>().RunAsync();

        Assert.Equal("Edda Marrow", house.Vet.Name);
        Assert.Empty(await house.LookAsync(records => records.Database.GetPendingMigrationsAsync()));
        HorseRow row = Assert.Single((await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Rows);
        Assert.Equal(("Thistle Vane", "999000000000001", 2015), (row.Name, row.Microchip, row.BirthYear));
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, Assert.Single(row.OpenCases).Id)).Value;
        Assert.Equal(
            [ExaminationState.History, ExaminationState.History, ExaminationState.History, ExaminationState.Signed, ExaminationState.Draft],
            view.Examinations.Select(card => card.State)
        );
        Assert.Equal([3, 3, 3, 3], view.Course.Examinations.Select(examination => examination.Readings.Count));
        ExaminationView signed = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, view.Examinations[3].Id)).Value;
        Assert.Equal([null, "Outline traced again"], signed.Versions.Select(version => version.Reason));
        Assert.Equal([0.1, 0.12], signed.Versions.Select(version => version.Content.Readings[1].Values.LesionAreaCm2!.Value));
        Assert.Equal("Same vessel beside it", Assert.Single(view.LinkWords).Reason);
        Assert.True((await house.Get<GetChanges>().ExecuteAsync(house.Vet, view.Id)).Value.Count >= 8);
        TrailCheck trail = await house.VerifyAsync();
        Assert.Null(trail.FirstBreak);
        Assert.True(trail.Lines >= 8);
        Assert.Equal("{\"columns\":[]}", (await house.Get<FindMapping>().ExecuteAsync(house.Vet, "headings")).Value);
    }

    [Fact]
    public async Task A_kept_history_of_exercise_is_read_by_this_version_line_by_line()
    {
        using KeptCopy copy = new("issue-c");
        await using RecordsHouse house = await RecordsHouse.BuildAsync(copy.Folder);
        HorseRow row = Assert.Single((await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Rows);
        ExerciseHouse at = ExerciseHouse.In(house, row.Id, Assert.Single(row.OpenCases).Id);

        ExerciseView view = await at.ViewAsync();
        Assert.Equal(
            [typeof(PlanSigned), typeof(DayLogged), typeof(ConcernOpened), typeof(DecisionSigned), typeof(WorkLowered)],
            view.Lines.Select(line => line.Entry.GetType())
        );
        Assert.Equal(
            ExerciseHouse.Plan.Steps.Select(step => (step.Name, step.Walk, step.Trot, step.Modes, step.Gate?.Criteria)),
            view.Plan!.Plan.Steps.Select(step => (step.Name, step.Walk, step.Trot, step.Modes, step.Gate?.Criteria))
        );
        DayLog log = Assert.Single(view.Logs);
        Assert.Equal((new OutingMinutes(20), SignGrade.None, WorkModes.InHand), (log.Done, log.Heat, log.Modes));
        Decision decided = Assert.IsType<DecisionSigned>(Assert.Single(view.Decisions).Line.Entry).Decision;
        Assert.Equal(("as seen", DecisionKind.Hold), (decided.Reason, decided.Kind));
        Assert.True(Assert.Single(view.Concerns).IsAnswered);
        Assert.Equal(10, view.Today.Work.Outing.Walk);
        CareEntry care = Assert.Single((await house.Get<ListCare>().ExecuteAsync(house.Vet, at.Horse)).Value).Entry;
        Assert.Equal((CareKind.PlateletRichPlasma, new DateOnly(2026, 12, 8)), (care.Kind, care.StandDownUntil));
        BoardRow booked = await house.RowAsync(at.Case);
        Assert.Equal((new DateOnly(2027, 1, 3), "Box 4"), (booked.Booking!.Date, booked.Booking.Place));
    }

    [Fact]
    public async Task A_kept_account_and_what_was_being_typed_are_read_by_this_version()
    {
        using KeptCopy copy = new("issue-d");
        await using RecordsHouse house = await RecordsHouse.BuildAsync(copy.Folder);
        HorseRow row = Assert.Single((await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput())).Value.Rows);

        SignInAccount account = (await house.Get<AccountStore>().ByNameAsync(SignInAccount.Fold("EDDA")))!;
        Assert.Equal((house.Vet.PersonId, "a hash of the password"), (account.PersonId, account.PasswordHash));
        Assert.Equal(house.Vet.Name, (await house.Get<AccountStore>().PersonAsync(account))!.Name);
        Assert.Equal(
            "Firefox, Android",
            Assert.Single(await house.LookAsync(records => records.Sessions.Select(session => session.Browser).ToArrayAsync()))
        );
        TypedView typed = Assert.Single(
            (await house.Get<GetTyped>().ExecuteAsync(house.Vet, new GetTypedInput(row.Id, TypedForm.Decision))).Value
        );
        Assert.Equal([KeyValuePair.Create("reason", "fills in")], typed.Fields);
    }

    private static async Task MakeWhenAskedAsync()
    {
        if (Environment.GetEnvironmentVariable(MakeVariable) is not { Length: > 0 } name)
        {
            return;
        }

        string file = FileOf(name);
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await FillAsync(house);
        File.Delete(file);
        await house.LookAsync(records => records.Database.ExecuteSqlAsync($"VACUUM INTO {file}"));
    }

    private static async Task FillAsync(RecordsHouse house)
    {
        ImportResult imported = (
            await house
                .Get<ApplyImport>()
                .ExecuteAsync(
                    house.Vet,
                    new ApplyImportInput
                    {
                        CommandId = Guid.NewGuid(),
                        Cases = [Files.Healing("Vane LH", new("Thistle Vane", "999000000000001", new DateOnly(2015, 4, 2)))],
                    }
                )
        ).Value;
        Guid caseId = imported.Cases[0].CaseId;
        Saved signed = await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 9, 1), (10, 0), (12, 0.1), (14, 0)));
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, signed.Id)).Value;
        Assert.True(
            (
                await house
                    .Get<AmendExamination>()
                    .ExecuteAsync(
                        house.Vet,
                        new AmendExaminationInput
                        {
                            CommandId = Guid.NewGuid(),
                            Id = signed.Id,
                            Version = signed.Version,
                            Reason = "Outline traced again",
                            Content = view.Content with
                            {
                                Readings =
                                [
                                    .. view.Content.Readings.Select(row =>
                                        row.Values.LevelCm == 12 ? row with { Values = row.Values with { LesionAreaCm2 = 0.12 } } : row
                                    ),
                                ],
                            },
                        }
                    )
            ).Succeeded
        );
        await house.DraftAsync(caseId, Wishes.Content(new DateOnly(2026, 11, 20), (10, 0), (12, 0.05)));
        CaseView injury = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        PlaceKey Key(int examination) => new(injury.Course.Examinations[examination].Id, LinkPath.Axial, new Centimetres(12));
        Assert.True(
            (
                await house
                    .Get<PinLink>()
                    .ExecuteAsync(
                        house.Vet,
                        new LinkWordInput
                        {
                            CommandId = Guid.NewGuid(),
                            CaseId = caseId,
                            First = Key(0),
                            Second = Key(1),
                            Reason = "Same vessel beside it",
                        }
                    )
            ).Succeeded
        );
        await house
            .Get<RememberMapping>()
            .ExecuteAsync(house.Vet, new RememberMappingInput(Guid.NewGuid(), "headings", "{\"columns\":[]}"));
        ExerciseHouse at = ExerciseHouse.In(house, injury.Horse.Id, caseId);
        await FillExerciseAsync(at);
        await FillAccountAsync(at);
    }

    private static async Task FillAccountAsync(ExerciseHouse at)
    {
        string invitation = new('d', 64);
        Assert.True(
            (
                await at
                    .House.Get<InvitePerson>()
                    .ExecuteAsync(at.House.Vet, new InvitePersonInput(Guid.NewGuid(), at.House.Vet.PersonId, invitation, false))
            ).Succeeded
        );
        Assert.True(
            (await at.House.Get<InvitationDoor>().UseAsync(invitation, new AccountChoice("Edda", "a hash of the password"))).Succeeded
        );
        await at.House.Get<SessionDoor>().BeginAsync(at.House.Vet, "Firefox, Android", isDemo: false);
        Dictionary<string, string?> typed = new(StringComparer.Ordinal) { ["reason"] = "fills in" };
        Assert.True(
            (
                await at
                    .House.Get<KeepTyped>()
                    .ExecuteAsync(at.House.Vet, new KeepTypedInput(Guid.NewGuid(), at.Horse, TypedForm.Decision, typed))
            ).Succeeded
        );
    }

    private static async Task FillExerciseAsync(ExerciseHouse at)
    {
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        DayLog log = new()
        {
            Date = ExerciseHouse.Today,
            Done = new OutingMinutes(20),
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
            Heat = SignGrade.None,
        };
        Assert.True((await at.LogAsync(log)).Succeeded);
        Assert.True((await at.ReportAsync()).Succeeded);
        Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
        Assert.True(
            (
                await at
                    .House.Get<LowerWork>()
                    .ExecuteAsync(
                        at.House.Vet,
                        new LowerWorkInput(
                            Guid.NewGuid(),
                            at.Horse,
                            (await at.ViewAsync()).Today.Work with
                            {
                                Outing = new OutingMinutes(10),
                            },
                            ExerciseHouse.Today,
                            null,
                            "farrier comes"
                        )
                    )
            ).Succeeded
        );
        Assert.True(
            (
                await at
                    .House.Get<SaveCare>()
                    .ExecuteAsync(
                        at.House.Vet,
                        new SaveCareInput
                        {
                            CommandId = Guid.NewGuid(),
                            HorseId = at.Horse,
                            Entry = new CareEntry
                            {
                                Kind = CareKind.PlateletRichPlasma,
                                CaseId = at.Case.ToString(),
                                From = ExerciseHouse.Today,
                                StandDownUntil = ExerciseHouse.Today.AddDays(14),
                            },
                        }
                    )
            ).Succeeded
        );
        Assert.True((await at.House.BookAsync(at.Case, 40, "09:30", "Box 4")).Succeeded);
    }

    /// <summary>A folder with a copy of a kept database, gone afterwards.</summary>
    private sealed class KeptCopy : IDisposable
    {
        public KeptCopy(string name) => File.Copy(FileOf(name), Path.Combine(Folder, "rehabtrack.db"));

        public string Folder { get; } = Directory.CreateTempSubdirectory("rehabtrack-records-").FullName;

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
