using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Decisions;

public sealed class DecisionEntryTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Theory]
    [InlineData(DecisionKind.Advance, SuggestedMove.Advance, false)]
    [InlineData(DecisionKind.Advance, SuggestedMove.Hold, true)]
    [InlineData(DecisionKind.Hold, SuggestedMove.Stop, true)]
    [InlineData(DecisionKind.StepBack, SuggestedMove.StepBack, false)]
    [InlineData(DecisionKind.Stop, SuggestedMove.StepBack, true)]
    [InlineData(DecisionKind.Pause, SuggestedMove.Stop, false)]
    [InlineData(DecisionKind.Close, SuggestedMove.Advance, false)]
    public void Another_answer_than_suggested_is_told_apart(DecisionKind kind, SuggestedMove move, bool differs) =>
        Assert.Equal(differs, DecisionEntry.Differs(kind, move));

    [Fact]
    public void Where_the_rules_say_nothing_nobody_disagrees() => Assert.False(DecisionEntry.Differs(DecisionKind.Advance, null));

    [Fact]
    public async Task A_stop_carries_no_place_no_ceilings_and_no_floor_even_when_they_were_typed_before()
    {
        DecisionEntry entry = await EntryAsync("Typed");
        entry.Choose(DecisionKind.Advance);
        entry[Gait.Trot] = "4";
        entry.HasFloor = true;
        Assert.Equal((4, new PlanPlace(0, 0)), (entry.Read()!.Limits!.Trot, entry.Read()!.Place));

        entry.Choose(DecisionKind.Stop);

        Decision stop = entry.Read()!;
        Assert.Equal((null, null, null, null), (stop.Place, stop.Limits, stop.Floor, stop.ValidUntil));
    }

    [Fact]
    public async Task A_ceiling_that_is_no_number_is_told_and_not_taken()
    {
        DecisionEntry entry = await EntryAsync("Ceiling");
        entry.Choose(DecisionKind.Hold);
        entry[Gait.Walk] = "ten";

        Assert.Null(entry.Read()!.Limits);
        Assert.True(entry.IsUnread);
        Assert.Contains("“ten”", entry.For("limits"), StringComparison.Ordinal);
    }

    private async Task<DecisionEntry> EntryAsync(string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, name);
        await horse.SignAsync(HorseInRehab.Plan);
        ExerciseView view = await horse.ViewAsync();
        return new DecisionEntry(view);
    }
}
