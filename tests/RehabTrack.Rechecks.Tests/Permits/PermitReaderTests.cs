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
    public void A_recheck_told_as_overdue_lapses_after_the_grace_and_wants_an_examination()
    {
        Story story = Logged().Holds(PermitHoldKind.RecheckOverdue, 10);

        Assert.Equal((PermitState.Held, PermitState.Lapsed), (story.On(24).State, story.On(25).State));
        Assert.Equal(PermitState.Lapsed, story.Decides(DecisionKind.Hold, 26).On(26).State);
        Assert.Equal(PermitState.Held, story.Examines(27).Decides(DecisionKind.Hold, 27).On(27).State);
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
