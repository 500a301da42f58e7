using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

/// <summary>
/// The rules that protect the horse, one by one, on a plan of 28 days of walk (10, 15, 20, 25), 14 days of 25 walk and 5 trot, a gate
/// that is due on day 42, and then 20 walk with 10, 15, 20 trot.
/// </summary>
public sealed class PermitReaderTests
{
    private const string OtherCase = "right fore";
    private static readonly PlanVersion Plan = Plans.Simple;
    private static readonly PlanVersion Floored = Plan with { Floor = Plans.Walk(10) };
    private static readonly PlanPlace PastGate = new(2, 0);

    private static Story Logged(PlanVersion? plan = null) => Story.Of(plan ?? Plan).LogsEach(0, 100);

    private static OutingMinutes Outing(Story story, int day) => story.On(day).Work.Outing;

    private static PermitReasonCode[] Codes(Story story, int day) => [.. story.On(day).Reasons.Select(reason => reason.Code)];

    [Theory]
    [InlineData(0, 10, 0)]
    [InlineData(6, 10, 0)]
    [InlineData(7, 15, 0)]
    [InlineData(27, 25, 0)]
    [InlineData(28, 25, 5)]
    [InlineData(41, 25, 5)]
    public void Growth_inside_the_signed_stretch_comes_week_by_week(int day, int walk, int trot)
    {
        Assert.Equal(new OutingMinutes(walk, trot), Outing(Logged(), day));
        Assert.Equal(PermitState.Live, Logged().On(day).State);
    }

    [Fact]
    public void A_permit_names_its_row_and_its_due_date()
    {
        Permit permit = Logged().On(30);

        Assert.Equal(new PermitSource("simple", 1, new PlanPlace(1, 2), new PlanPlace(1, 2), "walk and trot", Story.Day(0)), permit.Source);
        Assert.Equal((Story.Day(42), true, Story.Day(56)), (permit.Due, permit.IsGateDue, permit.GraceEnds));
        Assert.Equal(new PermitReason(PermitReasonCode.Step) { Step = "walk and trot", Week = 1 }, Assert.Single(permit.Reasons));
    }

    // Nothing is signed.

    [Fact]
    public void Without_a_plan_no_work_is_signed()
    {
        Permit permit = PermitReader.For(PermitHistory.Empty, Story.Day(0));

        Assert.Equal((PermitState.NothingSigned, Work.None), (permit.State, permit.Work));
        Assert.Equal(PermitReasonCode.NoPlan, Assert.Single(permit.Reasons).Code);
    }

    [Fact]
    public void A_plan_permits_nothing_before_it_counts_and_nothing_before_it_was_recorded()
    {
        Story later = new Story(Plan).Opens(0).Signs(Plan, 5, recorded: 2);
        Story late = new Story(Plan).Opens(0).Signs(Plan, 0, recorded: 4);

        Assert.Equal(PermitState.NothingSigned, later.On(4).State);
        Assert.Equal(new OutingMinutes(10), Outing(later, 5));
        Assert.Equal(PermitState.NothingSigned, late.On(3).State);
        Assert.Equal(new OutingMinutes(10), Outing(late, 4));
    }

    [Fact]
    public void A_first_plan_that_is_no_advance_permits_nothing_until_one_is_signed()
    {
        Story story = new Story(Plan).Opens(0).Signs(Plan, 0, isAdvance: false).LogsEach(0, 9);

        Assert.Equal(Work.None, story.On(5).Work);
        Assert.Contains(PermitReasonCode.PlanNotAdvance, Codes(story, 5));
        Assert.Equal(new OutingMinutes(10), Outing(story.Decides(DecisionKind.Advance, 6, PlanPlace.Start), 6));
    }

    [Fact]
    public void A_plan_for_no_open_case_permits_nothing()
    {
        Story story = new Story(Plan).Signs(Plan, 0).Opens(3);

        Assert.Equal((PermitState.Closed, PermitReasonCode.NoOpenCase), (story.On(4).State, Codes(story, 4)[0]));
    }

    // The gate.

    [Theory]
    [InlineData(42, 25, PermitState.Held)]
    [InlineData(56, 25, PermitState.Held)]
    [InlineData(57, 0, PermitState.Lapsed)]
    [InlineData(100, 0, PermitState.Lapsed)]
    public void At_a_gate_growth_stops_and_after_the_grace_the_work_lapses(int day, int walk, PermitState state)
    {
        Assert.Equal(walk, Outing(Logged(), day).Walk);
        Assert.Equal(state, Logged().On(day).State);
    }

    [Fact]
    public void A_missed_gate_leaves_the_floor_where_one_was_signed()
    {
        Assert.Equal(Plans.Walk(10), Logged(Floored).On(57).Work);
        Assert.DoesNotContain(PermitReasonCode.NoFloor, Codes(Logged(Floored), 57));
        Assert.Equal([PermitReasonCode.GateMissed, PermitReasonCode.NoFloor], Codes(Logged(), 57)[..2]);
    }

    [Theory]
    [InlineData(42)]
    [InlineData(50)]
    [InlineData(70)]
    public void A_signed_examination_on_or_after_the_due_date_and_a_signed_decision_pass_the_gate(int day)
    {
        Story story = Logged().Examines(day).Decides(DecisionKind.Advance, day, PastGate);

        Assert.Equal(new OutingMinutes(20, 10), Outing(story, day));
        Assert.Equal(new OutingMinutes(20, 15), Outing(story, day + 7));
    }

    [Fact]
    public void An_examination_alone_passes_no_gate() => Assert.Equal(Work.None, Logged().Examines(42).On(60).Work);

    [Fact]
    public void A_decision_alone_passes_no_gate()
    {
        Story story = Logged().Decides(DecisionKind.Advance, 50, PastGate);

        Assert.Equal(new OutingMinutes(25, 5), Outing(story, 50));
        Assert.Equal(Work.None, story.On(60).Work);
        Assert.Contains(PermitReasonCode.DecisionWithoutExamination, Codes(story, 50));
    }

    [Fact]
    public void An_examination_before_the_due_date_passes_no_gate() =>
        Assert.Equal(Work.None, Logged().Examines(41).Decides(DecisionKind.Advance, 43, PastGate).On(60).Work);

    [Fact]
    public void An_examination_signed_after_the_decision_passes_no_gate() =>
        Assert.Equal(Work.None, Logged().Decides(DecisionKind.Advance, 43, PastGate).Examines(43).On(60).Work);

    [Fact]
    public void An_imported_examination_or_decision_passes_no_gate()
    {
        Assert.Equal(Work.None, Logged().Examines(43, isImported: true).Decides(DecisionKind.Advance, 43, PastGate).On(60).Work);
        Assert.Equal(Work.None, Logged().Examines(43).Decides(DecisionKind.Advance, 43, PastGate, isImported: true).On(60).Work);
    }

    [Fact]
    public void A_gate_waits_for_an_examination_of_every_open_case()
    {
        Story one = Logged().Opens(10, OtherCase).Examines(42).Decides(DecisionKind.Advance, 42, PastGate);
        Story both = Logged().Opens(10, OtherCase).Examines(42).Examines(42, OtherCase).Decides(DecisionKind.Advance, 42, PastGate);

        Assert.Equal(new OutingMinutes(25, 5), Outing(one, 42));
        Assert.Equal(new OutingMinutes(20, 10), Outing(both, 42));
    }

    [Fact]
    public void An_advance_before_the_gate_is_due_only_lowers()
    {
        Story story = Logged().Examines(30).Decides(DecisionKind.Advance, 30, PastGate);

        Assert.Equal(new OutingMinutes(25, 5), Outing(story, 41));
        Assert.Contains(PermitReasonCode.DecisionBeforeGate, Codes(story, 30));
        Assert.Equal(PermitState.Lapsed, story.On(57).State);
    }

    [Fact]
    public void A_vet_can_bring_the_recheck_forward_by_signing_it()
    {
        Story story = Logged().Decides(DecisionKind.Hold, 35, recheck: 35).Examines(35).Decides(DecisionKind.Advance, 35, PastGate);

        Assert.Equal(new OutingMinutes(20, 10), Outing(story, 35));
    }

    [Fact]
    public void Two_gates_are_not_passed_at_once()
    {
        PlanVersion plan = Plan with { Steps = [Plan.Steps[1], Plan.Steps[1], Plan.Steps[2]] };
        Story story = Story.Of(plan).LogsEach(0, 30).Examines(14).Decides(DecisionKind.Advance, 14, PastGate);

        Assert.Equal(new OutingMinutes(25, 5), Outing(story, 14));
        Assert.Contains(PermitReasonCode.DecisionBeforeGate, Codes(story, 14));
    }

    [Fact]
    public void A_signed_recheck_date_stops_growth_and_lapses_like_a_gate()
    {
        Story story = Story.Of(Plan, recheck: Story.Day(10)).LogsEach(0, 60);

        Assert.Equal(new OutingMinutes(15), Outing(story, 24));
        Assert.Equal((PermitState.Held, PermitReasonCode.RecheckDue), (story.On(24).State, Codes(story, 24)[0]));
        Assert.Equal((PermitState.Lapsed, PermitReasonCode.RecheckMissed), (story.On(25).State, Codes(story, 25)[0]));
    }

    [Fact]
    public void Once_due_only_an_examination_and_a_decision_unfreeze_even_for_a_hold()
    {
        Assert.Equal(Work.None, Logged().Decides(DecisionKind.Hold, 43).On(57).Work);
        Assert.Equal(new OutingMinutes(25, 5), Outing(Logged().Examines(43).Decides(DecisionKind.Hold, 43), 57));
    }

    [Fact]
    public void A_hold_without_a_recheck_date_is_due_after_the_usual_days()
    {
        Story story = Logged().Decides(DecisionKind.Hold, 20);

        Assert.Equal(Story.Day(80), story.On(30).Due);
        Assert.Equal(new OutingMinutes(20), Outing(story, 94));
        Assert.Equal(PermitState.Lapsed, story.On(95).State);
    }

    // The interval between rechecks that is signed with a step.

    private static PlanVersion Every(int? first, int? second = null) =>
        Plan with
        {
            Steps =
            [
                Plan.Steps[0] with
                {
                    RecheckIntervalDays = first,
                },
                Plan.Steps[1] with
                {
                    RecheckIntervalDays = second,
                },
                Plan.Steps[2],
            ],
        };

    [Fact]
    public void The_interval_of_a_step_stops_growth_before_a_later_date_that_was_signed()
    {
        Story story = Story.Of(Every(14), recheck: Story.Day(60)).LogsEach(0, 60);

        Assert.Equal((Story.Day(14), false, Story.Day(28)), (story.On(3).Due, story.On(3).IsGateDue, story.On(3).GraceEnds));
        Assert.Equal((PermitState.Live, new OutingMinutes(15)), (story.On(13).State, Outing(story, 13)));
        Assert.Equal((PermitState.Held, PermitReasonCode.RecheckDue), (story.On(14).State, Codes(story, 14)[0]));
        Assert.Equal(new OutingMinutes(15), Outing(story, 28));
        Assert.Equal((PermitState.Lapsed, PermitReasonCode.RecheckMissed), (story.On(29).State, Codes(story, 29)[0]));
        Assert.Equal(PermitState.Lapsed, story.Decides(DecisionKind.Hold, 30).On(30).State);
        Assert.Equal(PermitState.Held, story.Examines(31).Decides(DecisionKind.Hold, 31).On(31).State);
    }

    [Fact]
    public void The_interval_runs_from_the_examination_that_was_longest_ago()
    {
        Story one = new Story(Every(30)).Opens(0).Examines(0).Signs(Every(30), 10).LogsEach(10, 60);
        Story two = new Story(Every(30))
            .Opens(0)
            .Opens(0, OtherCase)
            .Examines(5)
            .Examines(8)
            .Examines(2, OtherCase)
            .Signs(Every(30), 10)
            .LogsEach(10, 60);

        Assert.Equal(Story.Day(30), one.On(10).Due);
        Assert.Equal(Story.Day(32), two.On(10).Due);
    }

    [Fact]
    public void An_interval_that_is_over_when_it_is_signed_is_due_on_that_day()
    {
        Story story = new Story(Every(30)).Opens(0).Examines(0).Signs(Every(30), 50).LogsEach(50, 80);

        Assert.Equal((Story.Day(50), PermitState.Held), (story.On(50).Due, story.On(50).State));
        Assert.Equal((new OutingMinutes(10), PermitState.Lapsed), (Outing(story, 64), story.On(65).State));
    }

    [Theory]
    [InlineData(null, 5, 28)]
    [InlineData(null, 35, 35)]
    [InlineData(null, 45, 42)]
    [InlineData(40, 30, 30)]
    [InlineData(20, 5, 20)]
    public void The_interval_of_a_step_that_comes_later_counts_from_its_first_day_on(int? first, int second, int due) =>
        Assert.Equal(Story.Day(due), Story.Of(Every(first, second)).On(0).Due);

    [Fact]
    public void No_pause_and_no_examination_without_a_decision_moves_the_end_of_an_interval()
    {
        Assert.Equal(Story.Day(14), Story.Of(Every(14)).LogsEach(0, 60).Pauses(3, 8).On(12).Due);
        Assert.Equal(Story.Day(14), Story.Of(Every(14)).LogsEach(0, 60).Examines(10).On(12).Due);
        Assert.Equal(
            Story.Day(24),
            Story.Of(Every(14)).LogsEach(0, 60).Examines(10).Decides(DecisionKind.Advance, 11, new PlanPlace(0, 11)).On(12).Due
        );
    }

    [Fact]
    public void A_hold_is_due_at_the_end_of_the_interval_of_its_step() =>
        Assert.Equal(
            Story.Day(24),
            Story.Of(Every(14)).LogsEach(0, 60).Examines(10).Decides(DecisionKind.Hold, 10, recheck: 50).On(12).Due
        );

    [Fact]
    public void The_interval_of_a_step_brings_no_gate_forward()
    {
        Story story = Story.Of(Every(14)).LogsEach(0, 60).Examines(14).Decides(DecisionKind.Advance, 14, PastGate);

        Assert.Equal(new OutingMinutes(15), Outing(story, 14));
        Assert.Contains(PermitReasonCode.DecisionBeforeGate, Codes(story, 14));
    }

    [Fact]
    public void At_a_gate_an_examination_since_an_earlier_interval_is_not_enough()
    {
        Story before = Story.Of(Every(14)).LogsEach(0, 60).Examines(20).Decides(DecisionKind.Advance, 43, PastGate);
        Story after = Story.Of(Every(14)).LogsEach(0, 60).Examines(42).Decides(DecisionKind.Advance, 43, PastGate);

        Assert.Contains(PermitReasonCode.DecisionWithoutExamination, Codes(before, 43));
        Assert.Equal(new OutingMinutes(20, 10), Outing(after, 43));
    }

    // Days and minutes of a week. Day 0 is a Monday.

    private static readonly PlanVersion FiveDays = Plan with
    {
        Steps = [Plans.Step("walk", 60, new GaitRule(20), 0) with { DaysAWeek = 5, Turnout = Turnout.SmallPaddock }],
    };

    private static Story Worked(Story story, int minutes, params int[] days)
    {
        foreach (int day in days)
        {
            story.Does(day, new OutingMinutes(minutes));
        }

        return story;
    }

    [Fact]
    public void When_the_days_of_the_week_are_done_the_horse_rests_until_monday()
    {
        Story story = Worked(Story.Of(FiveDays), 20, 0, 1, 2, 3, 4);

        Assert.Equal(new OutingMinutes(20), Outing(story, 4));
        foreach (int day in new[] { 5, 6 })
        {
            Permit permit = story.On(day);
            Assert.Equal((new Work { Turnout = Turnout.SmallPaddock }, PermitState.Live), (permit.Work, permit.State));
            Assert.Equal(new PermitReason(PermitReasonCode.RestDay) { Done = 5, Most = 5 }, permit.Reasons[0]);
            Assert.Equal(new OutingMinutes(20), permit.BeforeWeek.Outing);
        }

        Assert.Equal(new OutingMinutes(20), Outing(story, 7));
    }

    [Fact]
    public void Days_in_the_box_and_two_logs_of_one_day_are_no_more_days()
    {
        Story story = Worked(Story.Of(FiveDays), 10, 0, 0, 1, 2, 3).Logs(4);

        Assert.Equal(new OutingMinutes(20), Outing(story, 5));
        Assert.DoesNotContain(PermitReasonCode.RestDay, Codes(story, 5));
    }

    [Fact]
    public void A_log_that_comes_late_makes_the_rest_of_its_week_days_of_rest()
    {
        Story story = Worked(Story.Of(FiveDays), 20, 0, 1, 2, 3);

        Assert.True(story.On(5).Work.HasOuting);
        Assert.False(story.Does(4, new OutingMinutes(20), recorded: 9).On(5).Work.HasOuting);
    }

    [Fact]
    public void A_day_of_rest_neither_stops_nor_drops_nor_hides_an_increase()
    {
        Story story = Worked(Story.Of(FiveDays), 20, 0, 1, 2, 3, 4);
        PlanSigned more = new()
        {
            Order = 100,
            RecordedOn = Story.Day(5),
            Plan = FiveDays with { Id = "more", Number = 2, Steps = [FiveDays.Steps[0] with { Walk = new GaitRule(30) }] },
            From = Story.Day(5),
            IsAdvance = true,
        };

        Assert.Null(PermitReader.LastDrop(story.History, Story.Day(6)));
        Assert.True(SigningPreview.Of(story.History, more).IsIncrease);
        Assert.Equal(story.On(6).Source, Story.Of(FiveDays).LogsEach(0, 4).On(6).Source);
    }

    [Fact]
    public void While_growth_is_held_the_day_of_rest_is_told_first_and_after_a_concern_the_concern()
    {
        Story held = Worked(Story.Of(FiveDays), 20, 0, 1, 2, 3, 4).Holds(PermitHoldKind.Setback, 3);
        Story worried = Worked(Story.Of(FiveDays with { Floor = Plans.Walk(10) with { DaysAWeek = 5 } }), 10, 0, 1, 2, 3, 4).Worries(3);

        Assert.Equal([PermitReasonCode.RestDay, PermitReasonCode.Setback], Codes(held, 5)[..2]);
        Assert.Equal([PermitReasonCode.Concern, PermitReasonCode.RestDay], Codes(worried, 5)[..2]);
        Assert.False(worried.On(5).Work.HasOuting);
    }

    [Theory]
    [InlineData(20, 20, false)]
    [InlineData(60, 20, false)]
    [InlineData(85, 15, true)]
    [InlineData(100, 0, true)]
    [InlineData(140, 0, true)]
    public void Of_the_cap_of_a_week_the_rest_of_the_week_gets_what_is_left(int monday, int left, bool told)
    {
        Story story = Worked(Story.Of(FiveDays with { Caps = new PlanCaps(WeekMinutes: 100) }), monday, 0);

        Assert.Equal(new OutingMinutes(left), Outing(story, 1));
        Assert.Equal(told, Codes(story, 1).Contains(PermitReasonCode.WeekMinutesDone));
        Assert.Equal(new OutingMinutes(20), Outing(story, 7));
    }

    [Fact]
    public void A_changed_plan_that_is_no_advance_keeps_the_cap_of_the_week()
    {
        PlanVersion capped = FiveDays with { Caps = new PlanCaps(WeekMinutes: 100) };
        PlanVersion next = FiveDays with { Id = "next", Number = 2 };

        Assert.Equal(new OutingMinutes(10), Outing(Worked(Story.Of(capped), 90, 0).Signs(next, 1, isAdvance: false), 1));
        Assert.Equal(new OutingMinutes(20), Outing(Worked(Story.Of(capped), 90, 0).Signs(next, 1), 1));
    }

    // Concern, signs, holds.

    [Fact]
    public void A_concern_drops_to_the_floor_at_once_until_a_vet_signs()
    {
        Story story = Logged(Floored).Worries(15);

        Assert.Equal(Plans.Walk(20), story.On(14).Work);
        Assert.Equal((PermitState.Floor, Plans.Walk(10)), (story.On(15).State, story.On(15).Work));
        Assert.Equal(Plans.Walk(10), story.On(40).Work);
        Assert.Equal(new OutingMinutes(20), Outing(story.Decides(DecisionKind.Hold, 41), 41));
    }

    [Fact]
    public void The_floor_never_raises()
    {
        PlanVersion plan = Plan with { Floor = Plans.Walk(30, 10) };

        Assert.Equal(new OutingMinutes(10), Outing(Story.Of(plan).Worries(2), 3));
    }

    [Theory]
    [InlineData(SignGrade.NotChecked, PermitState.Live)]
    [InlineData(SignGrade.None, PermitState.Live)]
    [InlineData(SignGrade.Slight, PermitState.Floor)]
    [InlineData(SignGrade.Severe, PermitState.Floor)]
    public void A_sign_in_the_log_is_a_concern(SignGrade heat, PermitState state) =>
        Assert.Equal(state, Logged().Logs(9, heat: heat).On(10).State);

    [Fact]
    public void A_concern_entered_late_lowers_the_days_since_and_outlives_a_decision_signed_before_it()
    {
        Story story = Logged().Decides(DecisionKind.Hold, 12).Worries(10, recorded: 14);

        Assert.Equal(PermitState.Floor, story.On(10).State);
        Assert.Equal(PermitState.Floor, story.On(30).State);
    }

    [Theory]
    [InlineData(PermitHoldKind.Setback)]
    [InlineData(PermitHoldKind.UnsignedSetback)]
    [InlineData(PermitHoldKind.BasisChanged)]
    public void A_hold_stops_growth_until_a_vet_signs(PermitHoldKind kind)
    {
        Story story = Logged().Holds(kind, 10);

        Assert.Equal((PermitState.Held, new OutingMinutes(15)), (story.On(38).State, Outing(story, 38)));
        story.Decides(DecisionKind.Advance, 39, new PlanPlace(0, 10));
        Assert.Equal(new OutingMinutes(20), Outing(story, 43));
    }

    [Fact]
    public void A_hold_whose_ground_is_gone_ends_without_a_jump()
    {
        Story story = Logged().Holds(PermitHoldKind.UnsignedSetback, 10, 19);

        Assert.Equal(new OutingMinutes(15), Outing(story, 20));
        Assert.Equal(new OutingMinutes(15), Outing(story, 23));
        Assert.Equal(new OutingMinutes(20), Outing(story, 24));
    }

    [Fact]
    public void When_the_vet_withdrew_nothing_is_permitted_until_another_signs()
    {
        Story story = Logged(Floored).Holds(PermitHoldKind.VetWithdrawn, 10, 12);

        Assert.Equal((PermitState.Stopped, Work.None), (story.On(20).State, story.On(20).Work));
        Assert.Equal(new OutingMinutes(15), Outing(story.Decides(DecisionKind.Hold, 21), 21));
    }

    // Anyone may lower; no jump.

    [Fact]
    public void Anyone_may_lower_for_a_time_and_no_jump_follows()
    {
        Story story = Logged().Lowers(Plans.Walk(12), 7, 20);

        Assert.Equal(new OutingMinutes(12), Outing(story, 7));
        Assert.Equal(new OutingMinutes(12), Outing(story, 20));
        Assert.Equal(new OutingMinutes(15), Outing(story, 21));
        Assert.Equal(new OutingMinutes(20), Outing(story, 28));
    }

    [Fact]
    public void A_lowering_above_the_row_raises_nothing() =>
        Assert.Equal(new OutingMinutes(10), Outing(Logged().Lowers(Plans.Walk(90, 20), 3, 5), 4));

    [Theory]
    [InlineData(14, 15)]
    [InlineData(15, 0)]
    public void After_more_than_fourteen_days_away_a_vets_word_is_needed(int days, int walk)
    {
        Story story = Logged().Pauses(10, 10 + days - 1);

        Assert.Equal((PermitState.Paused, Work.None), (story.On(10 + days - 1).State, story.On(10 + days - 1).Work));
        Assert.Equal(walk, Outing(story, 10 + days).Walk);
        Assert.Equal(walk == 0 ? PermitState.Floor : PermitState.Live, story.On(10 + days).State);
        Assert.Equal(new OutingMinutes(15), Outing(story.Decides(DecisionKind.Hold, 10 + days), 10 + days));
    }

    [Fact]
    public void A_pause_in_pieces_is_one_pause()
    {
        Story story = Logged().Pauses(10, 17).Lowers(Work.None, 18, 24);

        Assert.Equal(PermitState.Floor, story.On(25).State);
    }

    [Theory]
    [InlineData(14, PermitState.Held)]
    [InlineData(15, PermitState.Floor)]
    public void A_pause_that_a_vet_signed_ends_by_itself_unless_it_was_longer_than_fourteen_days(int days, PermitState state)
    {
        Story story = Story.Of(Plan).LogsEach(0, 9).Decides(DecisionKind.Pause, 10, validUntil: 10 + days - 1).LogsEach(10 + days, 60);

        Assert.Equal(PermitState.Paused, story.On(10 + days - 1).State);
        Assert.Equal(state == PermitState.Held ? PermitState.Live : state, story.On(10 + days).State);
        Assert.Equal(state == PermitState.Held ? 15 : 0, Outing(story, 10 + days).Walk);
    }

    [Fact]
    public void A_week_without_a_log_stops_growth_and_logging_again_goes_on_without_a_jump()
    {
        Story story = Story.Of(Plan).LogsEach(0, 5).LogsEach(16, 60);

        Assert.Equal(PermitState.Live, story.On(11).State);
        Assert.Equal((PermitState.Held, PermitReasonCode.NoLog), (story.On(12).State, Codes(story, 12)[0]));
        // Day 12 to 15 are lost: week 3 of the step begins four days late.
        Assert.Equal(new OutingMinutes(15), Outing(story, 17));
        Assert.Equal(new OutingMinutes(20), Outing(story, 18));
    }

    [Theory]
    [InlineData(19, PermitState.Held)]
    [InlineData(20, PermitState.Floor)]
    [InlineData(40, PermitState.Floor)]
    public void More_than_fourteen_days_without_a_log_count_as_away(int day, PermitState state) =>
        Assert.Equal(state, Story.Of(Plan).LogsEach(0, 5).LogsEach(25, 60).On(day).State);

    [Fact]
    public void Rest_in_the_box_needs_no_log()
    {
        PlanVersion plan = Plan with { Steps = [Plans.Step("rest", 28, new GaitRule(0), 0), .. Plan.Steps] };

        Assert.Equal((PermitState.Live, new OutingMinutes(10)), (Story.Of(plan).On(28).State, Outing(Story.Of(plan), 28)));
    }

    [Fact]
    public void A_log_that_comes_late_or_by_import_lets_no_time_run()
    {
        Story late = Story.Of(Plan);
        Story imported = Story.Of(Plan);
        for (int day = 0; day < 14; day++)
        {
            late.Logs(day, recorded: day + 2);
            imported.Logs(day, isImported: true);
        }

        Assert.Equal(PermitState.Held, late.On(13).State);
        Assert.Equal(PermitState.Held, imported.On(13).State);
        Assert.Equal(Story.Of(Plan).On(13).Work, late.On(13).Work);
    }

    // Decisions.

    [Fact]
    public void A_hold_keeps_the_work_and_stops_growth()
    {
        Story story = Logged().Decides(DecisionKind.Hold, 10);

        Assert.Equal((PermitState.Held, new OutingMinutes(15)), (story.On(41).State, Outing(story, 41)));
    }

    [Fact]
    public void After_a_step_back_earlier_signatures_are_void()
    {
        Story story = Logged().Examines(42).Decides(DecisionKind.Advance, 42, PastGate).Decides(DecisionKind.StepBack, 50, PlanPlace.Start);

        Assert.Equal(new OutingMinutes(10), Outing(story, 50));
        Assert.Equal(new OutingMinutes(15), Outing(story, 57));
        Assert.Equal(Story.Day(92), story.On(57).Due);
        // Going up again wants a new examination on or after the new due date.
        story.Decides(DecisionKind.Advance, 92, PastGate);
        Assert.Equal(new OutingMinutes(25, 5), Outing(story, 92));
        Assert.Equal(new OutingMinutes(20, 10), Outing(story.Examines(93).Decides(DecisionKind.Advance, 93, PastGate), 93));
    }

    [Fact]
    public void An_advance_signed_for_later_is_void_once_a_step_back_is_signed()
    {
        Story story = Logged()
            .Decides(DecisionKind.Advance, 20, new PlanPlace(1, 0), recorded: 14)
            .Decides(DecisionKind.StepBack, 16, PlanPlace.Start);

        Assert.Equal(new OutingMinutes(10), Outing(story, 20));
    }

    [Fact]
    public void A_stop_signed_for_later_still_stops_after_an_advance()
    {
        Story story = Logged().Decides(DecisionKind.Stop, 20, recorded: 14).Decides(DecisionKind.Advance, 16, new PlanPlace(1, 0));

        Assert.Equal(new OutingMinutes(25, 5), Outing(story, 19));
        Assert.Equal(PermitState.Stopped, story.On(20).State);
    }

    [Fact]
    public void A_step_forward_is_no_step_back()
    {
        Story story = Logged().Decides(DecisionKind.StepBack, 8, new PlanPlace(1, 0));

        Assert.Equal(new OutingMinutes(15), Outing(story, 20));
        Assert.Contains(PermitReasonCode.DecisionOutOfPlace, Codes(story, 8));
    }

    [Fact]
    public void A_stop_permits_nothing_not_even_the_floor_and_a_hold_does_not_lift_it()
    {
        Story story = Logged(Floored).Decides(DecisionKind.Stop, 10).Decides(DecisionKind.Hold, 12);

        Assert.Equal((PermitState.Stopped, Work.None), (story.On(10).State, story.On(10).Work));
        Assert.Equal((PermitState.Stopped, Work.None), (story.On(30).State, story.On(30).Work));
        Assert.Equal(new OutingMinutes(10), Outing(story.Decides(DecisionKind.StepBack, 31, PlanPlace.Start), 31));
    }

    [Fact]
    public void Of_two_vets_on_one_day_the_later_signature_counts()
    {
        Assert.Equal(
            PermitState.Stopped,
            Logged().Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0)).Decides(DecisionKind.Stop, 10).On(10).State
        );
        Assert.Equal(
            new OutingMinutes(10),
            Outing(Logged().Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0)).Decides(DecisionKind.StepBack, 10, PlanPlace.Start), 10)
        );
    }

    [Fact]
    public void Signed_lower_ceilings_hold_until_the_next_placing()
    {
        Story story = Logged().Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0), limits: new OutingLimits(Trot: 3));

        Assert.Equal(new OutingMinutes(25, 3), Outing(story, 15));
        Assert.Equal(new OutingMinutes(25, 3), Outing(story.Decides(DecisionKind.Hold, 16, limits: new OutingLimits(Trot: 9)), 17));
        Assert.Equal(new OutingMinutes(25, 5), Outing(story.Decides(DecisionKind.Advance, 18, new PlanPlace(1, 0)), 18));
    }

    [Fact]
    public void After_its_last_day_a_signature_leaves_the_floor()
    {
        Story story = Logged(Floored).Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0), validUntil: 17);

        Assert.Equal(PermitState.Live, story.On(17).State);
        Assert.Equal((PermitState.Lapsed, Plans.Walk(10)), (story.On(18).State, story.On(18).Work));
    }

    [Fact]
    public void A_floor_signed_with_a_decision_takes_the_place_of_the_plans()
    {
        Story story = Logged(Floored).Decides(DecisionKind.Hold, 10, floor: Plans.Walk(5)).Worries(12);

        Assert.Equal(Plans.Walk(5), story.On(12).Work);
    }

    [Fact]
    public void A_decision_on_another_version_only_lowers()
    {
        Story story = Logged().Decides(DecisionKind.Advance, 10, new PlanPlace(1, 0), plan: "another");

        Assert.Equal(new OutingMinutes(15), Outing(story, 10));
        Assert.Contains(PermitReasonCode.DecisionOutOfPlace, Codes(story, 10));
    }

    [Fact]
    public void A_stop_that_comes_before_the_first_day_of_a_signed_plan_keeps_it_from_beginning()
    {
        Story story = new Story(Plan).Opens(0).Signs(Plan, 10, recorded: 2).Decides(DecisionKind.Stop, 5);

        Assert.Equal((PermitState.NothingSigned, Work.None), (story.On(10).State, story.On(10).Work));
        Assert.Equal(new OutingMinutes(10), Outing(story.Signs(Plan, 12), 12));
    }

    // A changed plan.

    [Fact]
    public void A_changed_plan_counts_from_its_date_with_the_horse_where_the_vet_placed_it()
    {
        PlanVersion next = Plan with { Id = "next", Number = 2, Steps = [Plans.Step("walk", 60, new GaitRule(33, 1, 40), 0)] };
        Story story = Logged().Signs(next, 20, new PlanPlace(0, 14), recorded: 18);

        Assert.Equal(new OutingMinutes(20), Outing(story, 19));
        Assert.Equal(new OutingMinutes(35), Outing(story, 20));
        Assert.Equal(2, story.On(20).Source!.PlanNumber);
    }

    [Fact]
    public void A_changed_plan_that_is_no_advance_permits_no_more_than_the_old_one_did()
    {
        PlanVersion next = Plan with { Id = "next", Number = 2, Steps = [Plans.Step("walk", 60, new GaitRule(18, 1, 40), 0)] };
        Story story = Logged().Signs(next, 20, isAdvance: false);

        Assert.Equal(new OutingMinutes(18), Outing(story, 20));
        Assert.Equal(new OutingMinutes(20), Outing(story, 41));
        Assert.Contains(PermitReasonCode.PlanNotAdvance, Codes(story, 41));
    }

    [Fact]
    public void A_changed_plan_lifts_no_missed_gate_without_an_examination()
    {
        PlanVersion next = Plan with { Id = "next", Number = 2 };

        Assert.Equal(Work.None, Logged().Signs(next, 60).On(60).Work);
        Assert.Equal(new OutingMinutes(10), Outing(Logged().Examines(60).Signs(next, 60), 60));
    }

    [Fact]
    public void A_place_beyond_a_gate_of_a_changed_plan_wants_an_examination_since_the_last_placing()
    {
        PlanVersion next = Plan with { Id = "next", Number = 2 };

        Assert.Equal(new OutingMinutes(15), Outing(Logged().Signs(next, 10, PastGate), 10));
        Assert.Equal(new OutingMinutes(20, 10), Outing(Logged().Examines(9).Signs(next, 10, PastGate), 10));
    }

    [Fact]
    public void An_older_version_signed_for_later_does_not_come_back()
    {
        PlanVersion hard = Plan with { Id = "hard", Number = 2, Steps = [Plans.Step("walk", 60, new GaitRule(60), 30)] };
        PlanVersion mild = Plan with { Id = "mild", Number = 3, Steps = [Plans.Step("walk", 60, new GaitRule(5), 0)] };
        Story story = Logged().Signs(hard, 20, recorded: 10).Signs(mild, 15, recorded: 12);

        Assert.Equal(new OutingMinutes(5), Outing(story, 20));
    }

    [Fact]
    public void An_imported_plan_is_history()
    {
        PlanVersion next = Plan with { Id = "next", Number = 2, Steps = [Plans.Step("walk", 60, new GaitRule(60), 30)] };

        Assert.Equal(new OutingMinutes(15), Outing(Logged().Signs(next, 10, isImported: true), 10));
    }

    // Cases.

    [Fact]
    public void One_closed_case_of_two_does_not_end_the_plan_and_the_last_one_does()
    {
        Story story = new Story(Plan).Opens(0).Opens(0, OtherCase).Signs(Plan, 0).LogsEach(0, 60).Closes(10, OtherCase);

        Assert.Equal(new OutingMinutes(15), Outing(story, 10));
        story.Closes(20);
        Assert.Equal((PermitState.Closed, Work.None), (story.On(20).State, story.On(20).Work));
    }

    [Fact]
    public void A_case_put_away_after_the_signature_does_not_make_up_for_its_examination()
    {
        Story Signed() => Logged().Opens(10, OtherCase).Examines(42);

        Assert.Equal(new OutingMinutes(25, 5), Outing(Signed().Decides(DecisionKind.Advance, 42, PastGate).Closes(42, OtherCase), 42));
        Assert.Equal(new OutingMinutes(20, 10), Outing(Signed().Closes(42, OtherCase).Decides(DecisionKind.Advance, 42, PastGate), 42));
    }

    [Theory]
    [InlineData(60)]
    [InlineData(50)]
    public void A_case_put_away_after_a_changed_plan_was_signed_spares_it_no_examination(int closed)
    {
        Story story = Logged().Opens(10, OtherCase).Signs(Plan with { Id = "next", Number = 2 }, 60, recorded: 45);

        Assert.Equal(Work.None, story.On(60).Work);
        Assert.Equal(Work.None, story.Closes(closed, recorded: closed).On(60).Work);
        Assert.Equal(Work.None, Logged().Opens(10, OtherCase).Signs(Plan with { Id = "next" }, 60).Closes(55, recorded: 60).On(60).Work);
    }

    [Fact]
    public void A_plan_begun_on_the_day_on_which_the_one_before_it_ended_is_a_first_plan()
    {
        Story story = Logged().Closes(20).Opens(20, OtherCase).Signs(Plan with { Id = "next", Number = 2 }, 20, isAdvance: false);

        Assert.Equal(Work.None, story.On(25).Work);
        Assert.Contains(PermitReasonCode.PlanNotAdvance, Codes(story, 25));
    }

    [Fact]
    public void A_case_opened_later_does_not_keep_a_plan_alive_that_was_not_signed_for_it()
    {
        Story story = Logged().Opens(5, OtherCase).Closes(10);

        Assert.Equal(PermitState.Closed, story.On(10).State);
        Assert.Equal(PermitState.Held, Logged().Opens(5, OtherCase).Decides(DecisionKind.Hold, 6).Closes(10).On(10).State);
    }

    [Fact]
    public void A_case_opened_again_does_not_bring_an_ended_plan_back() =>
        Assert.Equal(PermitState.Closed, Logged().Closes(10).Opens(11).On(12).State);

    [Fact]
    public void A_signed_close_ends_the_plan_and_only_a_new_plan_permits_again()
    {
        Story story = Logged().Decides(DecisionKind.Close, 10).Decides(DecisionKind.Advance, 11, PlanPlace.Start);

        Assert.Equal((PermitState.Closed, PermitReasonCode.PlanClosed), (story.On(12).State, Codes(story, 12)[0]));
        Assert.Equal(new OutingMinutes(10), Outing(story.Signs(Plan with { Id = "next" }, 13), 13));
    }

    // Found by the search for histories that break a rule, or while looking for them by hand.

    [Fact]
    public void A_horse_behind_its_weeks_never_gets_more_walk_than_the_signed_weeks_would_give_it()
    {
        // Past the gate walk falls from 25 to 20: held back in the step before, 25 must not come back on a date that was signed for 20.
        PlanVersion plan = Plan with
        {
            Steps = [Plans.Step("walk", 14, new GaitRule(40), 0), Plans.Step("walk and trot", 28, new GaitRule(35), 5)],
        };
        Story story = Story.Of(plan).LogsEach(0, 60).Pauses(8, 12);

        Assert.Equal(new OutingMinutes(35), Outing(story, 15));
        Assert.Contains(PermitReasonCode.BehindSignedWeeks, Codes(story, 15));
        Assert.Equal(new OutingMinutes(35, 5), Outing(story, 19));
    }

    [Fact]
    public void A_pause_that_nobody_signed_moves_no_gate_further_away()
    {
        Story story = Logged().Pauses(8, 17);

        Assert.Equal(Story.Day(42), story.On(20).Due);
        Assert.Equal(PermitState.Lapsed, story.On(57).State);
    }

    [Fact]
    public void A_pause_does_not_hide_that_logs_are_missing()
    {
        Story story = Story.Of(Plan).LogsEach(0, 5).Pauses(8, 15).LogsEach(30, 60);

        Assert.Equal(PermitState.Floor, story.On(20).State);
    }

    [Fact]
    public void A_lowering_stops_time_even_where_the_signed_row_has_nothing_to_lower()
    {
        // The signed row has moved on to a step that is not filled in; the horse is still in the one before.
        PlanVersion plan = Plan with
        {
            Steps = [Plan.Steps[0] with { ShortestDays = 14 }, new PlanStep { Name = "unfilled", ShortestDays = 28 }],
        };
        Story story = Story.Of(plan).LogsEach(0, 60).Pauses(3, 7).Lowers(Plans.Walk(5), 15, 17);

        Assert.Equal(story.On(15).Source!.Place, story.On(18).Source!.Place);
    }

    [Fact]
    public void A_horse_in_its_box_because_it_is_behind_still_needs_its_logs()
    {
        PlanVersion plan = Plan with { Steps = [Plans.Step("rest", 10, new GaitRule(0), 0), .. Plan.Steps] };

        Assert.Equal(PermitState.Floor, Story.Of(plan).Pauses(3, 8).On(30).State);
        Assert.Equal(PermitState.Floor, Story.Of(plan).On(30).State);
    }

    [Fact]
    public void Of_two_plans_of_one_day_that_are_no_advance_the_second_is_held_below_the_first_where_that_one_placed_the_horse()
    {
        PlanVersion two = Plan with { Id = "two", Number = 2, Steps = [Plans.Step("short", 7, new GaitRule(3), 0), Plan.Steps[0]] };
        PlanVersion three = Plan with { Id = "three", Number = 3, Steps = [Plans.Step("walk", 60, new GaitRule(40), 0)] };
        Story story = Logged().Signs(two, 20, new PlanPlace(1, 7), isAdvance: false).Signs(three, 20, isAdvance: false);

        // The second plan's row of its day 7 is 15; its first step, where nobody placed the horse, has no say.
        Assert.Equal(new OutingMinutes(15), Outing(story, 20));
    }

    // Print.

    [Theory]
    [InlineData(0, 14)]
    [InlineData(46, 56)]
    [InlineData(60, 74)]
    public void A_print_is_void_before_it_could_show_too_much(int day, int last) =>
        Assert.Equal(Story.Day(last), Logged().On(day).VoidAfter);

    [Fact]
    public void A_print_is_void_when_the_walk_of_the_next_week_falls()
    {
        PlanVersion plan = Plan with
        {
            Steps = [Plans.Step("walk", 14, new GaitRule(40), 0), Plans.Step("walk and trot", 28, new GaitRule(35), 5)],
        };

        Assert.Equal(Story.Day(13), Story.Of(plan).LogsEach(0, 10).On(10).VoidAfter);
    }

    [Fact]
    public void A_print_without_logs_is_void_when_the_horse_would_count_as_away() =>
        Assert.Equal(Story.Day(14), Story.Of(Plan).LogsEach(0, 0).On(3).VoidAfter);

    // docs/methods/permit.md, the example.
    [Theory]
    [InlineData(0, 10, PermitState.Live)]
    [InlineData(7, 15, PermitState.Live)]
    [InlineData(10, 0, PermitState.Paused)]
    [InlineData(14, 15, PermitState.Live)]
    [InlineData(18, 20, PermitState.Live)]
    [InlineData(20, 0, PermitState.Floor)]
    [InlineData(22, 20, PermitState.Held)]
    [InlineData(42, 20, PermitState.Held)]
    [InlineData(57, 0, PermitState.Lapsed)]
    [InlineData(58, 20, PermitState.Live)]
    public void A_course_as_the_page_tells_it(int day, int walk, PermitState state)
    {
        Permit permit = Logged()
            .Pauses(10, 13)
            .Logs(20, heat: SignGrade.Slight)
            .Decides(DecisionKind.Hold, 22, recheck: 42)
            .Examines(58)
            .Decides(DecisionKind.StepBack, 58, new PlanPlace(0, 14))
            .On(day);

        Assert.Equal((new OutingMinutes(walk), state), (permit.Work.Outing, permit.State));
    }
}
