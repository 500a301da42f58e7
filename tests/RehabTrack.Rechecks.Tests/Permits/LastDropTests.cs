using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Simulation.Permits;

namespace RehabTrack.Rechecks.Tests.Permits;

public sealed class LastDropTests
{
    private static readonly PlanVersion Plan = Plans.Simple with { Steps = [Plans.Step("walk", 28, new GaitRule(20), 0)] };

    private static readonly PermitSettings Settings = new();

    private static Story Stopped(int day) => Story.Of(Plan).Decides(DecisionKind.Stop, day);

    [Fact]
    public void Nothing_signed_and_the_same_work_each_day_are_no_drop()
    {
        Assert.Null(PermitReader.LastDrop(new PermitHistory([]), Story.Day(10)));
        Assert.Null(PermitReader.LastDrop(Story.Of(Plan).History, Story.Day(5)));
    }

    [Fact]
    public void A_stop_is_a_drop_on_its_day_until_it_is_past()
    {
        PermitHistory history = Stopped(3).History;

        Assert.Null(PermitReader.LastDrop(history, Story.Day(2)));
        Assert.Equal(Story.Day(3), PermitReader.LastDrop(history, Story.Day(3)));
        Assert.Equal(Story.Day(3), PermitReader.LastDrop(history, Story.Day(3 + Settings.DropDays)));
        Assert.Null(PermitReader.LastDrop(history, Story.Day(4 + Settings.DropDays)));
    }
}
