using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Watch;

/// <summary>
/// What stands, code by code, each with a case just below its line: on a plan of 28 days of walk (10, 15, 20, 25), 14 days of 25 walk and
/// 5 trot, and a gate that is due on day 42. Lines and days are those of <c>shared/watch.json</c> and <c>shared/permits.json</c>.
/// </summary>
public sealed class StandingReaderTests
{
    private const string OtherCase = "right fore";

    private static Story Working(int until = 100) => Story.Of(Plans.Simple).LogsEach(0, until);

    private static WatchedHorse Horse(Story story, params IReadOnlyList<WatchedCase> cases) =>
        new() { Cases = cases, History = story.History };

    private static IReadOnlyList<StandingFinding> On(int day, Story story, params IReadOnlyList<WatchedCase> cases) =>
        StandingReader.Of(Horse(story, cases), Story.Day(day));

    private static StandingKind[] Kinds(int day, Story story) => [.. On(day, story).Select(finding => finding.Kind)];

    private static WatchedCase Case(Finding? finding = null, RecheckDue? due = null, string id = Story.FirstCase) =>
        new(id, finding is null ? [] : [finding], Story.Day(1), due ?? RecheckDue.None);

    private static Finding Of(FindingKind kind, FindingSeverity severity = FindingSeverity.Amber, double? change = null) =>
        new()
        {
            Kind = kind,
            Severity = severity,
            Date = Story.Day(2),
            ChangePercent = change,
        };

    private static Story Done(Story story, params (int Day, int Walk, int Trot)[] days)
    {
        foreach ((int day, int walk, int trot) in days)
        {
            story.Does(day, new OutingMinutes(walk, trot));
        }

        return story;
    }

    private static StandingFinding? Over(int day, Story story) =>
        On(day, story).SingleOrDefault(finding => finding.Kind == StandingKind.OverExercise);

    [Fact]
    public void A_horse_in_order_needs_nobody() => Assert.Empty(On(10, Working(), Case()));

    [Fact]
    public void A_horse_without_exercise_has_what_its_case_says()
    {
        StandingFinding finding = Assert.Single(On(10, new Story(Plans.Simple), Case(Of(FindingKind.NoProgress))));

        Assert.Equal((StandingKind.OfCase, FindingSeverity.Amber, Story.Day(2)), (finding.Kind, finding.Severity, finding.Since));
        Assert.Equal((StandingStep.LookAtCase, null, null), (finding.Next, finding.Step, finding.Week));
    }

    [Theory]
    [InlineData(FindingKind.NoProgress)]
    [InlineData(FindingKind.HealingSlowly)]
    public void Slow_healing_is_held_against_the_step_and_week_of_the_plan(FindingKind kind)
    {
        StandingFinding finding = Assert.Single(On(30, Working(), Case(Of(kind))));

        Assert.Equal(("walk and trot", 1, StandingStep.Decide), (finding.Step, finding.Week, finding.Next));
    }

    [Theory]
    [InlineData(FindingKind.MeasurerChanged, StandingStep.LookAtCase)]
    [InlineData(FindingKind.StanceDiffers, StandingStep.LookAtCase)]
    [InlineData(FindingKind.UncertainLink, StandingStep.SettleLink)]
    [InlineData(FindingKind.Worsening, StandingStep.Decide)]
    [InlineData(FindingKind.NewLesionLevel, StandingStep.Decide)]
    [InlineData(FindingKind.NewlyAbnormalLevel, StandingStep.Decide)]
    [InlineData(FindingKind.LigamentAreaRise, StandingStep.Decide)]
    public void What_does_not_go_by_the_work_names_no_step(FindingKind kind, StandingStep next)
    {
        StandingFinding finding = Assert.Single(On(30, Working(), Case(Of(kind, FindingSeverity.Note))));

        Assert.Equal((null, next, FindingSeverity.Note), (finding.Step, finding.Next, finding.Severity));
    }

    [Fact]
    public void What_an_earlier_examination_said_stands_no_more() =>
        Assert.Empty(On(30, Working(), Case(Of(FindingKind.Worsening) with { IsEarlier = true })));

    [Fact]
    public void A_concern_stands_until_a_vet_signs_after_it()
    {
        Story story = Working().Worries(10);
        StandingFinding open = Assert.Single(On(11, story));

        Assert.Equal((StandingKind.ConcernOpen, FindingSeverity.Red, Story.Day(10), 1), (open.Kind, open.Severity, open.Since, open.Count));
        Assert.Empty(On(12, story.Decides(DecisionKind.Hold, 12)));
    }

    [Fact]
    public void A_concern_about_a_horse_without_a_line_stands_until_a_plan_is_signed()
    {
        StandingFinding open = Assert.Single(On(11, new Story(Plans.Simple).Worries(10)));

        Assert.Equal((StandingKind.ConcernOpen, FindingSeverity.Red, StandingStep.CallYard), (open.Kind, open.Severity, open.Next));
    }

    [Fact]
    public void The_practices_list_takes_what_is_above_a_note_and_a_changed_measurer_of_the_latest_examination_alone()
    {
        Assert.True(WatchRules.IsWatched(Of(FindingKind.NoProgress)));
        Assert.True(WatchRules.IsWatched(Of(FindingKind.MeasurerChanged, FindingSeverity.Note)));
        Assert.False(WatchRules.IsWatched(Of(FindingKind.TapeShift, FindingSeverity.Note)));
        Assert.False(WatchRules.IsWatched(Of(FindingKind.Worsening, FindingSeverity.Red) with { IsEarlier = true }));
        Assert.False(WatchRules.IsWatched(Of(FindingKind.MeasurerChanged, FindingSeverity.Note) with { IsEarlier = true }));
    }

    [Fact]
    public void A_sign_in_a_log_is_a_concern_and_a_log_without_one_is_none()
    {
        Assert.Equal([StandingKind.ConcernOpen], Kinds(11, Working().Logs(10, heat: SignGrade.Slight)));
        Assert.Empty(Kinds(11, Working().Logs(10, heat: SignGrade.NotChecked)));
    }

    [Theory]
    [InlineData(PermitHoldKind.UnsignedSetback, StandingKind.UnsignedSetback, FindingSeverity.Red)]
    [InlineData(PermitHoldKind.BasisChanged, StandingKind.BasisChanged, FindingSeverity.Amber)]
    [InlineData(PermitHoldKind.VetWithdrawn, StandingKind.VetWithdrawn, FindingSeverity.Red)]
    public void A_hold_stands_until_a_vet_signs(PermitHoldKind hold, StandingKind kind, FindingSeverity severity)
    {
        Story story = Working().Holds(hold, 10);

        Assert.Empty(On(9, story));
        StandingFinding finding = Assert.Single(On(10, story));
        Assert.Equal((kind, severity, Story.Day(10)), (finding.Kind, finding.Severity, finding.Since));
        Assert.Empty(On(12, story.Decides(DecisionKind.Hold, 12)));
    }

    [Fact]
    public void The_hold_of_a_setback_is_told_by_the_case_that_shows_it() =>
        Assert.Empty(On(10, Working().Holds(PermitHoldKind.Setback, 10)));

    [Fact]
    public void A_hold_whose_ground_is_gone_stands_no_more()
    {
        Story story = Working().Holds(PermitHoldKind.UnsignedSetback, 10).Ends(PermitHoldKind.UnsignedSetback, 12);

        Assert.Equal([StandingKind.UnsignedSetback], Kinds(11, story));
        Assert.Empty(Kinds(12, story));
        Assert.Equal(PermitState.Live, story.On(12).State);
        Assert.Equal([StandingKind.UnsignedSetback], Kinds(14, story.Holds(PermitHoldKind.UnsignedSetback, 14)));
    }

    [Fact]
    public void Nobody_but_a_vet_ends_the_hold_of_a_withdrawn_vet() =>
        Assert.Equal(
            [StandingKind.VetWithdrawn],
            Kinds(13, Working().Holds(PermitHoldKind.VetWithdrawn, 10).Ends(PermitHoldKind.VetWithdrawn, 12))
        );

    [Fact]
    public void A_gate_stands_from_the_day_after_its_date_until_every_case_was_examined()
    {
        Story story = Working();

        Assert.Empty(On(42, story));
        StandingFinding first = Assert.Single(On(43, story));
        Assert.Equal(
            (StandingKind.GateNotExamined, FindingSeverity.Amber, Story.Day(42), 1, Story.Day(56), StandingStep.Examine),
            (first.Kind, first.Severity, first.Since, first.Days, first.Until, first.Next)
        );
        Assert.Equal(FindingSeverity.Amber, Assert.Single(On(56, story)).Severity);
        Assert.Equal(FindingSeverity.Red, Assert.Single(On(57, story)).Severity);
        Assert.Empty(On(45, Working().Examines(44)));
        Assert.Single(On(45, Working().Examines(41)));
        Assert.Single(On(45, Working().Opens(3, OtherCase).Examines(44)));
    }

    [Fact]
    public void An_overdue_recheck_stands_by_its_case_and_one_that_is_due_today_does_not()
    {
        ScheduleSettings usual = new();
        WatchedCase Examined(int day, int asked) => Case(due: RecheckDue.Of(Story.Day(day), usual, Story.Day(asked)));

        Assert.Empty(On(60, new Story(Plans.Simple), Examined(0, 60)));
        StandingFinding late = Assert.Single(On(61, new Story(Plans.Simple), Examined(0, 61)));
        Assert.Equal((StandingKind.RecheckOverdue, Story.Day(60), 1, StandingStep.Book), (late.Kind, late.Since, late.Days, late.Next));
    }

    [Fact]
    public void A_missed_gate_speaks_for_the_recheck_that_it_sets_and_for_no_other()
    {
        RecheckDue gate = new(Story.Day(42), RecheckState.Overdue, -3, DueBy.Gate);
        RecheckDue interval = new(Story.Day(40), RecheckState.Overdue, -5);

        Assert.Equal([StandingKind.GateNotExamined], On(45, Working(), Case(due: gate)).Select(finding => finding.Kind));
        Assert.Equal(
            [StandingKind.RecheckOverdue, StandingKind.GateNotExamined],
            On(45, Working(), Case(due: interval)).Select(finding => finding.Kind)
        );
    }

    [Theory]
    [InlineData(9, 6, false)]
    [InlineData(9, 7, true)]
    public void Without_a_log_for_a_week_it_stands(int last, int after, bool stands)
    {
        StandingFinding[] found = [.. On(last + after, Working(last))];

        Assert.Equal(
            stands ? [(StandingKind.NoLog, Story.Day(last), after)] : [],
            found.Select(one => (one.Kind, one.Since, one.Days!.Value))
        );
    }

    [Fact]
    public void Nobody_is_asked_for_a_log_of_a_horse_that_may_not_work()
    {
        PlanVersion rest = Plans.Simple with
        {
            Steps = [Plans.Step("rest", 28, new GaitRule(0), 0) with { OutingsADay = 0, DaysAWeek = 0 }],
        };

        Assert.Empty(On(20, Story.Of(rest)));
    }

    [Fact]
    public void After_more_than_two_weeks_without_a_log_a_vets_word_is_needed()
    {
        Assert.Equal([StandingKind.NoLog], Kinds(23, Working(9)));
        Assert.Equal([StandingKind.AwayTooLong], Kinds(24, Working(9)));
    }

    [Fact]
    public void Where_a_vet_stopped_the_work_nobody_is_asked_for_logs() => Assert.Empty(On(40, Working(9).Decides(DecisionKind.Stop, 12)));

    // Day 10 permits 15 min of walk: the lines are 5 min and 10 %.
    [Theory]
    [InlineData(15, 0, false)]
    [InlineData(19, 0, false)]
    [InlineData(20, 0, true)]
    [InlineData(15, 4, false)]
    [InlineData(15, 5, true)]
    public void Minutes_beyond_the_permit_stand_from_the_line_on(int walk, int trot, bool stands) =>
        Assert.Equal(stands, Over(10, Done(Working(9), (10, walk, trot))) is not null);

    [Fact]
    public void Of_a_long_days_work_the_share_counts_too()
    {
        PlanVersion longWalk = Plans.Simple with { Steps = [Plans.Step("walk", 28, new GaitRule(60), 0)] };

        Assert.Null(Over(10, Done(Story.Of(longWalk).LogsEach(0, 9), (10, 65, 0))));
        Assert.NotNull(Over(10, Done(Story.Of(longWalk).LogsEach(0, 9), (10, 66, 0))));
    }

    [Fact]
    public void A_way_of_working_that_was_not_permitted_stands_at_once()
    {
        StandingFinding over = Over(10, Working(9).Does(10, new OutingMinutes(15), WorkModes.Ridden))!;

        Assert.Equal([OverKind.Mode], over.Over);
        Assert.Equal((0, 1, FindingSeverity.Amber), (over.Minutes, over.Days, over.Severity));
    }

    [Fact]
    public void A_day_more_than_the_week_permits_is_too_much_also_when_the_others_were_entered_after_it()
    {
        PlanVersion five = Plans.Simple with { Steps = [Plans.Step("walk", 60, new GaitRule(20), 0) with { DaysAWeek = 5 }] };
        Story Worked(params int[] days)
        {
            Story story = Story.Of(five).LogsEach(0, 6);
            foreach (int day in days)
            {
                story.Does(day, new OutingMinutes(20), recorded: 12);
            }

            return story;
        }

        Assert.Null(Over(13, Worked(7, 8, 9, 10, 11)));
        StandingFinding over = Over(13, Worked(7, 8, 9, 10, 11, 12))!;
        Assert.Equal((Story.Day(12), 1), (over.Since, over.Days));
        Assert.Contains(OverKind.Days, over.Over);
        WatchedHorse shown = Horse(Worked(12, 7, 8, 9, 10, 11)) with
        {
            Shown = [KeyValuePair.Create(Story.Day(12), Plans.Walk(20) with { DaysAWeek = 5 })],
        };
        Assert.Equal([OverKind.Days], Assert.Single(StandingReader.Of(shown, Story.Day(13))).Over);
    }

    [Fact]
    public void Too_much_on_three_days_is_red_and_the_figures_are_of_all_of_them()
    {
        StandingFinding two = Over(12, Done(Working(9), (10, 25, 0), (11, 25, 0)))!;
        StandingFinding three = Over(12, Done(Working(9), (10, 25, 0), (11, 25, 0), (12, 27, 0)))!;

        Assert.Equal((FindingSeverity.Amber, 2, 20), (two.Severity, two.Days, two.Minutes));
        Assert.Equal((FindingSeverity.Red, 3, 32), (three.Severity, three.Days, three.Minutes));
        Assert.Equal((Story.Day(12), Story.Day(10)), (three.Since, three.Until));
    }

    [Fact]
    public void Too_much_work_stands_for_two_weeks_or_until_a_vet_signs()
    {
        Story story = Done(Working(9), (10, 25, 0)).LogsEach(11, 40);

        Assert.NotNull(Over(23, story));
        Assert.Null(Over(24, story));
        Assert.Null(Over(13, story.Decides(DecisionKind.Hold, 12)));
    }

    [Fact]
    public void What_the_page_showed_on_the_day_counts_not_what_became_known_later()
    {
        Story story = Done(Working(9), (10, 25, 0));
        WatchedHorse shown = Horse(story) with { Shown = [KeyValuePair.Create(Story.Day(10), Plans.Walk(25))] };

        Assert.Empty(StandingReader.Of(shown, Story.Day(11)));
    }

    [Fact]
    public void The_worst_comes_first_and_of_equals_what_has_stood_longest()
    {
        Story story = Working(9).Holds(PermitHoldKind.BasisChanged, 5).Holds(PermitHoldKind.UnsignedSetback, 16);

        Assert.Equal([StandingKind.UnsignedSetback, StandingKind.BasisChanged, StandingKind.NoLog], Kinds(16, story));
    }

    [Fact]
    public void A_closed_plan_asks_nothing_of_the_yard() => Assert.Empty(On(60, Working(9).Decides(DecisionKind.Close, 12)));

    public sealed class Acknowledging
    {
        private static Acknowledged As(StandingFinding finding) => new(finding.Key, finding.Severity, finding.Weight);

        [Fact]
        public void It_covers_the_same_and_what_has_become_better()
        {
            StandingFinding now = Assert.Single(On(10, Working(), Case(Of(FindingKind.LigamentAreaRise, change: 14))));
            StandingFinding better = Assert.Single(On(10, Working(), Case(Of(FindingKind.LigamentAreaRise, change: 12))));

            Assert.True(now.IsCoveredBy(As(now)));
            Assert.True(better.IsCoveredBy(As(now)));
        }

        [Fact]
        public void It_covers_neither_worse_figures_nor_another_severity_nor_another_day()
        {
            Finding rise = Of(FindingKind.LigamentAreaRise, change: 14);
            Acknowledged said = As(Assert.Single(On(10, Working(), Case(rise))));
            Finding[] others =
            [
                rise with
                {
                    ChangePercent = 19,
                },
                rise with
                {
                    Severity = FindingSeverity.Red,
                },
                rise with
                {
                    Date = Story.Day(9),
                },
                rise with
                {
                    TrackId = "another",
                },
            ];

            Assert.All(others, other => Assert.False(Assert.Single(On(10, Working(), Case(other))).IsCoveredBy(said)));
        }

        [Fact]
        public void It_is_of_one_case() =>
            Assert.NotEqual(
                Assert.Single(On(10, Working(), Case(Of(FindingKind.Worsening)))).Key,
                Assert.Single(On(10, Working(), Case(Of(FindingKind.Worsening), id: OtherCase))).Key
            );

        [Fact]
        public void What_only_waits_is_covered_for_a_week_more()
        {
            Story silent = Working(9);
            Acknowledged said = As(Assert.Single(On(16, silent)));

            Assert.True(Assert.Single(On(22, silent)).IsCoveredBy(said));
            Assert.False(Assert.Single(On(23, silent)).IsCoveredBy(said));
        }

        [Fact]
        public void Another_day_with_too_much_work_and_another_concern_are_not_covered()
        {
            Acknowledged over = As(Over(11, Done(Working(9), (10, 25, 0)))!);
            Acknowledged concern = As(Assert.Single(On(11, Working().Worries(10))));

            Assert.False(Over(12, Done(Working(9), (10, 25, 0), (12, 25, 0)))!.IsCoveredBy(over));
            Assert.False(Assert.Single(On(12, Working().Worries(10).Worries(12))).IsCoveredBy(concern));
        }
    }
}
