using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

public sealed class PlanPhaseTests
{
    private static Permit On(int day, Work work, PermitState state = PermitState.Live) =>
        PermitReader.For(Story.Of(Plans.Simple).History, Story.Day(day)) with
        {
            State = state,
            BeforeWeek = work,
        };

    [Fact]
    public void A_phase_is_the_hardest_gait_and_counts_from_the_day_after_it_was_permitted()
    {
        Permit[] permits =
        [
            On(0, Plans.Walk(20)),
            On(1, Plans.Walk(25)),
            On(2, Plans.Walk(20, 5)),
            On(3, Plans.Walk(20) with { Outing = new OutingMinutes(10, 5, 2) }),
            On(4, Plans.Walk(20) with { Outing = new OutingMinutes(10, 0, 0, 1) }),
            On(5, Work.None, PermitState.Floor),
        ];

        Assert.Equal(
            [
                new PlanPhaseStart(Story.Day(1), PlanPhase.Walk),
                new PlanPhaseStart(Story.Day(3), PlanPhase.Trot),
                new PlanPhaseStart(Story.Day(4), PlanPhase.CanterOrGallop),
                new PlanPhaseStart(Story.Day(6), PlanPhase.Walk),
            ],
            PlanPhaseReader.Of(permits)
        );
    }

    [Fact]
    public void Before_anything_is_signed_there_is_no_phase() =>
        Assert.Empty(PlanPhaseReader.Of([On(0, Work.None, PermitState.NothingSigned)]));
}
