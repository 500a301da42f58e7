using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Repeats;

public sealed class RepeatsTests
{
    private static RepeatTracing Tracing(
        string subject,
        double value,
        RepeatKind kind = RepeatKind.SameHorseAndDay,
        MeasuredSize size = MeasuredSize.LesionArea
    ) => new(subject, kind, size, "Ada", value);

    /// <summary>Pairs that differ by 2·share of their mean.</summary>
    private static RepeatTracing[] Pairs(int subjects, double share, RepeatKind kind = RepeatKind.SameHorseAndDay) =>
        [
            .. Enumerable
                .Range(1, subjects)
                .SelectMany(subject =>
                    new[] { 1 - share, 1 + share }.Select(factor => Tracing($"horse {subject}", 0.1 * subject * factor, kind))
                ),
        ];

    private static Task<Outcome<int>> AddAsync(RecordsHouse house, params RepeatTracing[] tracings) =>
        house.Get<AddRepeats>().ExecuteAsync(house.Vet, new AddRepeatsInput { CommandId = Guid.CreateVersion7(), Tracings = tracings });

    private static async Task<RepeatsView> ReadAsync(RecordsHouse house) =>
        (await house.Get<GetRepeats>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

    private static async Task<Outcome<Saved>> TakeAsync(RecordsHouse house, double? cv)
    {
        RepeatsView view = await ReadAsync(house);
        return await house
            .Get<TakeError>()
            .ExecuteAsync(
                house.Vet,
                new TakeErrorInput
                {
                    CommandId = Guid.CreateVersion7(),
                    Version = view.Practice.Version,
                    Size = MeasuredSize.LesionArea,
                    ShownCv = cv,
                }
            );
    }

    [Fact]
    public async Task What_is_entered_is_kept_in_its_order_and_can_be_put_away()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Assert.Equal(3, (await AddAsync(house, Tracing(" a ", 1.2), Tracing("a", 1.1), Tracing("b", 0.4))).Value);

        RepeatsView view = await ReadAsync(house);

        Assert.Equal([("a", 1.2), ("a", 1.1), ("b", 0.4)], view.Entered.Select(row => (row.Tracing.Subject, row.Tracing.Value)));
        Assert.Equal(1, Assert.Single(view.Studies).All!.DegreesOfFreedom);
        await house
            .Get<PutAwayRepeats>()
            .ExecuteAsync(house.Vet, new PutAwayRepeatsInput { CommandId = Guid.CreateVersion7(), Ids = [view.Entered[0].Id] });
        Assert.Equal([1.1, 0.4], (await ReadAsync(house)).Entered.Select(row => row.Tracing.Value));
    }

    [Fact]
    public async Task Everything_wrong_is_told_at_once_and_nothing_is_kept()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();

        Outcome<int> refused = await AddAsync(
            house,
            Tracing(" ", 1),
            Tracing("a", -1),
            Tracing("a", double.NaN),
            Tracing("a", 0, size: MeasuredSize.LigamentArea),
            Tracing("a", 99, size: MeasuredSize.Thickness),
            Tracing("a", 20, size: MeasuredSize.LesionPercent),
            Tracing("a", 0)
        );

        Assert.Equal(
            [
                ("tracings[0]", "repeat-without-subject"),
                ("tracings[1]", "repeat-out-of-range"),
                ("tracings[2]", "repeat-out-of-range"),
                ("tracings[3]", "repeat-out-of-range"),
                ("tracings[4]", "repeat-out-of-range"),
                ("tracings[5]", "repeat-of-share"),
            ],
            refused.Problems.Select(problem => (problem.Field, problem.Code))
        );
        Assert.Empty((await ReadAsync(house)).Entered);
        Assert.Equal(["repeats-none"], (await AddAsync(house)).Problems.Select(problem => problem.Code));
    }

    [Fact]
    public async Task Own_repeats_become_the_setting_with_their_origin_and_the_table_comes_back()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await AddAsync(house, Pairs(12, 0.03));
        double cv = Assert.Single((await ReadAsync(house)).Studies).All!.Cv!.Value;
        // Pairs at 1 ± .03: variance .0018 of a mean of 1.
        Assert.Equal(Math.Sqrt(0.0018), cv, 12);

        Assert.True((await TakeAsync(house, cv)).Succeeded);

        PracticeView practice = (await ReadAsync(house)).Practice;
        Assert.Equal(cv, practice.Settings.Error.LesionAreaCv);
        Assert.Equal(0.07, practice.Settings.Error.LigamentAreaCv);
        ErrorOrigin origin = practice.ErrorOrigins[MeasuredSize.LesionArea];
        Assert.Equal((12, 12), (origin.Subjects, origin.DegreesOfFreedom));
        Assert.NotEmpty(origin.TakenBy);
        Assert.True((await TakeAsync(house, null)).Succeeded);
        practice = (await ReadAsync(house)).Practice;
        Assert.True(practice.SettingsAreUsual);
        Assert.Empty(practice.ErrorOrigins);
    }

    [Fact]
    public async Task Figures_that_changed_since_they_were_shown_are_not_taken()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await AddAsync(house, Pairs(12, 0.03));
        double shown = Assert.Single((await ReadAsync(house)).Studies).All!.Cv!.Value;
        await AddAsync(house, Pairs(3, 0.2));

        Assert.Equal("repeats-changed", Assert.Single((await TakeAsync(house, shown)).Problems).Code);
        Assert.True((await ReadAsync(house)).Practice.SettingsAreUsual);
    }

    [Fact]
    public async Task Too_few_repeats_and_repeats_of_images_are_not_taken()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await AddAsync(house, [.. Pairs(9, 0.03), .. Pairs(30, 0.03, RepeatKind.SameImage)]);

        Assert.Equal("repeats-too-few", Assert.Single((await TakeAsync(house, Math.Sqrt(0.0018))).Problems).Code);
    }

    [Fact]
    public async Task The_open_verdicts_that_would_move_are_listed_before_anything_is_written()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = await SlowlyFallingAsync(house, "Thistle Vane");

        SettingsPreview preview = await PreviewAsync(house);

        MovedVerdict moved = Assert.Single(preview.Moved);
        Assert.Equal(caseId, moved.CaseId);
        Assert.Null(moved.Part);
        Assert.NotEqual(moved.Now, moved.Then);
        Assert.Contains(moved.Then, (Verdict[])[Verdict.Healing, Verdict.HealingSlowly]);
        Assert.Equal(0, preview.Staying);
        Assert.True((await ReadAsync(house)).Practice.SettingsAreUsual);
    }

    [Fact]
    public async Task The_verdicts_of_single_lesions_that_would_move_are_listed_too()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = (await house.CaseAsync((await house.HorseAsync()).Id)).Id;
        foreach ((int visit, double falling, double rising) in ((int, double, double)[])[(0, 0.5, 0.3), (1, 0.46, 0.6), (2, 0.42, 1.1)])
        {
            ExaminationContent upper = Wishes.Content(Day(visit), (10, 0), (13, falling), (16, 0));
            ExaminationContent lower = Wishes.Content(Day(visit), (19, 0), (22, rising), (25, 0));
            await house.SignedAsync(caseId, upper with { Readings = [.. Named(upper, "A"), .. Named(lower, "B")] });
        }

        SettingsPreview preview = await PreviewAsync(house);

        // A falls slowly, which only a good measurement tells; B grows, and the case with it, whoever measures.
        MovedVerdict moved = Assert.Single(preview.Moved);
        Assert.Equal((caseId, "A", Part.Body), (moved.CaseId, moved.Lesion, moved.Part!.Value));
        Assert.Equal((Verdict.NotYetReadable, Verdict.HealingSlowly), (moved.Now, moved.Then));
        Assert.Equal(2, preview.Staying);

        static IEnumerable<DraftReading> Named(ExaminationContent content, string lesion) =>
            content.Readings.Select(row => row with { Values = row.Values with { Lesion = lesion } });
    }

    [Fact]
    public async Task A_closed_case_and_an_archived_one_are_not_asked()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid open = await SlowlyFallingAsync(house, "Thistle Vane");
        Guid closed = await SlowlyFallingAsync(house, "Ember Lorne");
        Guid archived = await SlowlyFallingAsync(house, "Wren Tallow");
        Assert.Equal([closed, open, archived], (await PreviewAsync(house)).Moved.Select(moved => moved.CaseId));

        Outcome<ClosedCases> left = await house
            .Get<CloseCase>()
            .ExecuteAsync(
                house.Vet,
                new CloseCaseInput
                {
                    CommandId = Guid.CreateVersion7(),
                    CaseId = closed,
                    Version = await VersionAsync(house, closed),
                    End = CaseEnd.Sold,
                    On = Day(2),
                    Outcome = "Sold to the north",
                }
            );
        Assert.True(left.Succeeded);
        RecordInput put = new(Guid.CreateVersion7(), archived, await VersionAsync(house, archived));
        Assert.True((await house.Get<ArchiveCase>().ExecuteAsync(house.Vet, put)).Succeeded);

        SettingsPreview preview = await PreviewAsync(house);
        Assert.Equal(open, Assert.Single(preview.Moved).CaseId);
        Assert.Equal(0, preview.Staying);
    }

    private static DateOnly Day(int visit) => new DateOnly(2026, 7, 1).AddDays(60 * visit);

    private static async Task<Guid> VersionAsync(RecordsHouse house, Guid caseId) =>
        (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value.Version;

    /// <summary>A lesion that falls by a sixth in all: healing slowly when measured well, not to be told when measured badly.</summary>
    private static async Task<Guid> SlowlyFallingAsync(RecordsHouse house, string horse)
    {
        Guid caseId = (await house.CaseAsync((await house.HorseAsync(horse)).Id)).Id;
        foreach ((int visit, double lesion) in ((int, double)[])[(0, 0.5), (1, 0.46), (2, 0.42)])
        {
            await house.SignedAsync(caseId, Wishes.Content(Day(visit), (10, 0), (13, lesion), (16, 0.2 * lesion), (19, 0)));
        }

        return caseId;
    }

    private static async Task<SettingsPreview> PreviewAsync(RecordsHouse house)
    {
        MeasurementErrorSettings well = new()
        {
            LesionAreaCv = 0.01,
            AreaFloorCm2 = 0.001,
            SharedGainLog = 0.001,
        };
        return (await house.Get<PreviewSettings>().ExecuteAsync(house.Vet, new AnalysisSettings { Error = well })).Value;
    }

    [Fact]
    public async Task An_assistant_enters_and_does_not_take()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor assistant = await house.PersonAsync("Pip Danvers", Role.Assistant);
        await house
            .Get<AddRepeats>()
            .ExecuteAsync(assistant, new AddRepeatsInput { CommandId = Guid.CreateVersion7(), Tracings = Pairs(12, 0.03) });
        RepeatsView view = await ReadAsync(house);

        Outcome<Saved> refused = await house
            .Get<TakeError>()
            .ExecuteAsync(
                assistant,
                new TakeErrorInput
                {
                    CommandId = Guid.CreateVersion7(),
                    Version = view.Practice.Version,
                    Size = MeasuredSize.LesionArea,
                    ShownCv = view.Studies[0].All!.Cv,
                }
            );

        Assert.False(refused.Succeeded);
        Assert.Null(await house.LookAsync(records => records.Practices.Select(record => record.ErrorOriginsJson).FirstAsync()));
    }
}
