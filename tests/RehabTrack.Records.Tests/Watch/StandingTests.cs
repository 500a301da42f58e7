using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.History;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;
using RehabTrack.Records.Watch;

namespace RehabTrack.Records.Tests.Watch;

/// <summary>What stands on a real database, and what acknowledging it does and does not.</summary>
public sealed class StandingTests
{
    private static string Code<T>(Outcome<T> outcome) => Assert.Single(outcome.Problems).Code;

    private static Acknowledged As(StandingFinding finding) => new(finding.Key, finding.Severity, finding.Weight);

    private static async Task<IReadOnlyList<WatchedFinding>> StandingAsync(ExerciseHouse at) =>
        (await at.House.Get<GetStanding>().ExecuteAsync(at.House.Vet, at.Case)).Value;

    private static async Task<StandingPage> ListAsync(ExerciseHouse at, int page = 1) =>
        (await at.House.Get<ListStanding>().ExecuteAsync(at.House.Vet, page)).Value;

    private static Task<Outcome<Saved>> AcknowledgeAsync(
        ExerciseHouse at,
        Acknowledged seen,
        string? reason = "spoken with the yard",
        Actor? who = null
    ) =>
        at
            .House.Get<AcknowledgeFinding>()
            .ExecuteAsync(who ?? at.House.Vet, new AcknowledgeFindingInput(Guid.NewGuid(), at.Case, seen, reason));

    /// <summary>Four levels, the first and last sound, all traced by one person.</summary>
    private static ExaminationContent MeasuredBy(string measurer, DateOnly date, double ligamentCm2) =>
        new()
        {
            Date = date,
            Readings =
            [
                .. new[] { (8.0, 0.0), (10, 0.3), (12, 0.2), (14, 0) }.Select(level => new DraftReading(
                    null,
                    new ReadingDraft
                    {
                        Part = Part.Body,
                        LevelCm = level.Item1,
                        LigamentAreaCm2 = ligamentCm2,
                        LesionAreaCm2 = level.Item2,
                        Measurer = measurer,
                    }
                )),
            ],
        };

    private static DayLog Log(int walk) =>
        new()
        {
            Date = ExerciseHouse.Today,
            Done = new OutingMinutes(walk),
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
        };

    /// <summary>A horse whose plan permits twice 20 minutes of walk, of which 60 minutes were done today.</summary>
    private static async Task<(ExerciseHouse At, StandingFinding Over)> OverworkedAsync()
    {
        ExerciseHouse at = await ExerciseHouse.BuildAsync();
        Assert.True((await at.SignAsync(ExerciseHouse.Plan)).Succeeded);
        await at.LogAsync(Log(60));
        return (at, Assert.Single(await StandingAsync(at)).Finding);
    }

    [Fact]
    public async Task Too_much_work_stands_on_the_page_of_the_case_and_on_the_start_page()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            Assert.Equal((StandingKind.OverExercise, 20, ExerciseHouse.Today), (over.Kind, over.Minutes, over.Since));
            StandingRow row = Assert.Single((await ListAsync(at)).Rows);
            Assert.Equal(("Thistle Vane", at.Case), (row.HorseName, Assert.Single(row.Cases).Id));
            Assert.Equal(over.Key, Assert.Single(row.Findings).Finding.Key);
        }
    }

    [Fact]
    public async Task A_concern_stands_on_the_start_page_and_on_the_page_of_the_case_with_a_plan_and_without()
    {
        foreach (bool isPlanned in new[] { true, false })
        {
            await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
            if (isPlanned)
            {
                await at.SignAsync(ExerciseHouse.Plan);
            }

            await at.ReportAsync();

            Assert.Equal(StandingKind.ConcernOpen, Assert.Single(await StandingAsync(at)).Finding.Kind);
            Assert.Equal(StandingKind.ConcernOpen, Assert.Single(Assert.Single((await ListAsync(at)).Rows).Findings).Finding.Kind);
        }
    }

    [Fact]
    public async Task All_that_the_analysis_asks_a_person_for_is_listed_and_a_changed_measurer_with_it()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        RecordsHouse house = at.House;
        // Four sound levels are half as large again: more findings than a row of a list would show at a glance.
        await house.SignedAsync(at.Case, MeasuredBy("Edda Marrow", new DateOnly(2026, 9, 1), 1.0));
        await house.SignedAsync(at.Case, MeasuredBy("Ivo Lark", new DateOnly(2026, 11, 2), 1.5));

        FindingKind[] listed = [.. Assert.Single((await ListAsync(at)).Rows).Findings.Select(one => one.Finding.OfCase!.Kind)];

        Assert.Equal(4, listed.Count(kind => kind == FindingKind.LigamentAreaRise));
        Assert.Single(listed, FindingKind.MeasurerChanged);
    }

    [Fact]
    public async Task Acknowledging_folds_it_away_with_who_and_why()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            Assert.True((await AcknowledgeAsync(at, As(over))).Succeeded);

            StandingPage page = await ListAsync(at);
            Assert.Equal((0, 0, 1), (page.Rows.Count, page.HorseCount, page.AcknowledgedCount));
            Acknowledgement said = Assert.Single(Assert.Single(page.Acknowledged).Findings).Acknowledgement!;
            Assert.Equal(("Edda Marrow", "spoken with the yard"), (said.By, said.Reason));
            Assert.Equal(said, Assert.Single(await StandingAsync(at)).Acknowledgement);
        }
    }

    [Fact]
    public async Task Acknowledging_lifts_nothing()
    {
        await using ExerciseHouse at = await ExerciseHouse.BuildAsync();
        await at.SignAsync(ExerciseHouse.Plan);
        await at.ReportAsync();
        Permit before = (await at.YardAsync()).Permit;
        Assert.Equal(PermitState.Floor, before.State);

        Assert.True((await AcknowledgeAsync(at, As(Assert.Single(await StandingAsync(at)).Finding))).Succeeded);

        Permit after = (await at.YardAsync()).Permit;
        Assert.Equal(before with { Reasons = [] }, after with { Reasons = [] });
        Assert.Equal(before.Reasons, after.Reasons);
        Assert.False(Assert.Single((await at.ViewAsync()).Concerns).IsAnswered);
        Assert.Single((await at.House.Get<ListConcerns>().ExecuteAsync(at.House.Vet, NoInput.Value)).Value);
    }

    [Fact]
    public async Task Worse_figures_are_not_covered_by_what_was_said_of_less()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            await AcknowledgeAsync(at, As(over));
            await at.LogAsync(Log(10));

            WatchedFinding worse = Assert.Single(await StandingAsync(at));
            Assert.Equal((30, null), (worse.Finding.Minutes, worse.Acknowledgement));
            Assert.Single((await ListAsync(at)).Rows);
            Assert.Equal("finding-worse", Code(await AcknowledgeAsync(at, As(over))));
        }
    }

    [Fact]
    public async Task A_new_occurrence_is_not_covered()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            await AcknowledgeAsync(at, As(over));
            at.House.Time.Advance(TimeSpan.FromDays(1));
            Assert.NotNull(Assert.Single(await StandingAsync(at)).Acknowledgement);

            await at.LogAsync(Log(60) with { Date = ExerciseHouse.Today.AddDays(1) });
            Assert.Null(Assert.Single(await StandingAsync(at)).Acknowledgement);
        }
    }

    [Fact]
    public async Task What_does_not_stand_and_what_has_no_reason_is_not_acknowledged()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            Assert.Equal("field-empty", Code(await AcknowledgeAsync(at, As(over), " ")));
            Assert.Equal("finding-gone", Code(await AcknowledgeAsync(at, As(over) with { Key = "another" })));
            Assert.True((await at.DecideAsync(DecisionKind.Hold)).Succeeded);
            Assert.Equal("finding-gone", Code(await AcknowledgeAsync(at, As(over))));
        }
    }

    [Fact]
    public async Task Whoever_works_in_the_practice_may_acknowledge_and_nobody_else()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            Assert.Equal("not-allowed", Code(await AcknowledgeAsync(at, As(over), who: at.Trainer)));
            Assert.Equal("not-allowed", Code(await AcknowledgeAsync(at, As(over), who: at.Owner)));
            Assert.True((await AcknowledgeAsync(at, As(over), who: await at.House.PersonAsync("Pia Thorn", Role.Assistant))).Succeeded);
        }
    }

    [Fact]
    public async Task It_stands_in_the_history_of_the_case_and_cannot_be_changed()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            await AcknowledgeAsync(at, As(over));

            ChangeView change = (await at.House.Get<GetChanges>().ExecuteAsync(at.House.Vet, at.Case)).Value[0];
            Assert.Equal(("AcknowledgeFinding", "Acknowledgement"), (change.UseCase, change.Kind));
            Assert.Equal("OverExercise", change.Fields.Single(field => field.Field == "finding").After);
            Assert.Equal("spoken with the yard", change.Fields.Single(field => field.Field == "reason").After);
            await using SqliteConnection connection = new($"Data Source={at.House.Database}");
            await connection.OpenAsync();
            await using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "UPDATE Acknowledgement SET Reason = 'another'";
            await Assert.ThrowsAsync<SqliteException>(() => command.ExecuteNonQueryAsync());
        }
    }

    [Fact]
    public async Task A_closed_case_asks_nothing()
    {
        (ExerciseHouse at, StandingFinding over) = await OverworkedAsync();
        await using (at)
        {
            await at.CloseAsync(Records.Cases.CaseEnd.Retired);

            Assert.Empty(await StandingAsync(at));
            Assert.Empty((await ListAsync(at)).Rows);
            Assert.Equal("not-found", Code(await AcknowledgeAsync(at, As(over))));
        }
    }

    [Fact]
    public async Task The_list_goes_by_pages_and_the_most_severe_come_first()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        // A ligament that is 12 % larger at a sound level is amber; a lesion that grows is red.
        CaseFile amber = Files.Case(
            "Amber",
            new("Amber", null, null),
            ("2026-03-01", [(10, 1.4, 0), (14, 1.5, 0.8), (18, 1.3, 0)]),
            ("2026-05-01", [(10, 1.4, 0), (14, 1.5, 0.4), (18, 1.3, 0)]),
            ("2026-07-01", [(10, 1.4, 0), (14, 1.5, 0.15), (18, 1.46, 0)])
        );
        CaseFile[] red =
        [
            .. Enumerable
                .Range(1, 25)
                .Select(horse =>
                    Files.Case(
                        $"Red {horse}",
                        new($"Red {horse}", null, null),
                        ("2026-03-01", [(10, 1.4, 0), (12, 1.5, 0.3), (14, 1.3, 0)]),
                        ("2026-05-01", [(10, 1.4, 0), (12, 1.6, 0.6), (14, 1.3, 0)]),
                        ("2026-07-01", [(10, 1.4, 0), (12, 1.8, 1.0), (14, 1.3, 0)])
                    )
                ),
        ];
        await house
            .Get<ApplyImport>()
            .ExecuteAsync(house.Vet, new ApplyImportInput { CommandId = Guid.NewGuid(), Cases = [amber, .. red] });
        async Task<StandingPage> PageAsync(int page) => (await house.Get<ListStanding>().ExecuteAsync(house.Vet, page)).Value;

        StandingPage first = await PageAsync(1);
        Assert.Equal((1, 2, 26), (first.Number, first.Count, first.HorseCount));
        Assert.Equal(
            [.. Enumerable.Range(1, 25).Select(horse => $"Red {horse}").Order(StringComparer.Ordinal)],
            first.Rows.Select(row => row.HorseName).Order(StringComparer.Ordinal)
        );
        Assert.Equal(["Amber"], (await PageAsync(2)).Rows.Select(row => row.HorseName));
        Assert.Equal((1, 2), ((await PageAsync(0)).Number, (await PageAsync(99)).Number));
        Assert.All(first.Rows.SelectMany(row => row.Findings), finding => Assert.NotEqual(FindingSeverity.Note, finding.Finding.Severity));
    }
}
