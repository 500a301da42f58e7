using RehabTrack.Rechecks.Exercise;
using RehabTrack.Web.Features.Plans;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Plans;

public sealed class PlanEntryTests
{
    public static TheoryData<string> Templates => [.. PlanTemplates.All.Select(template => template.Name)];

    [Theory]
    [MemberData(nameof(Templates))]
    public void A_template_comes_through_the_fields_unchanged(string name)
    {
        PlanVersion plan = PlanTemplates.Find(name)!.ToPlan("", 0);

        PlanVersion read = PlanEntry.Of(plan).Plan;

        Assert.Equal((plan.Title, plan.Template, plan.Caps, plan.Floor), (read.Title, read.Template, read.Caps, read.Floor));
        Assert.Equal(plan.Steps.Count, read.Steps.Count);
        Assert.All(
            plan.Steps.Zip(read.Steps),
            pair =>
            {
                Assert.Equal(pair.First with { Gate = null }, pair.Second with { Gate = null });
                Assert.Equal(pair.First.Gate?.Criteria, pair.Second.Gate?.Criteria);
                Assert.Equal(pair.First.Gate?.Rules, pair.Second.Gate?.Rules);
            }
        );
    }

    [Fact]
    public void A_double_press_adds_one_step_and_one_that_holds_anything_is_followed_by_another()
    {
        PlanEntry entry = PlanEntry.Of(HorseInRehab.Plan);
        int before = entry.Steps.Count;

        Assert.Same(entry.Add(), entry.Add());
        Assert.Equal(before + 1, entry.Steps.Count);

        entry.Steps[^1].Turnout = Turnout.None;
        entry.Add();
        entry.Steps[^1].Gaits[Gait.Walk].FirstWeek = "1o";
        entry.Add();
        Assert.Equal(before + 3, entry.Steps.Count);
    }

    [Fact]
    public void What_cannot_be_read_is_told_once()
    {
        PlanEntry entry = PlanEntry.Of(HorseInRehab.Plan);
        entry.Steps[0].Length = "1o";
        entry.Read();

        Assert.Equal(string.Format(TextCulture.Default, ExerciseTexts.NotWhole, "1o"), entry.For("steps[0].length"));
        Assert.Equal((1, 1, false), (entry.ProblemCount, entry.ProblemsIn(0), entry.CanDraw));
    }

    [Fact]
    public void What_is_no_number_stays_typed_permits_nothing_and_is_told_beside_its_field()
    {
        PlanEntry entry = PlanEntry.Of(HorseInRehab.Plan);
        entry.Steps[0].Gaits[Gait.Walk].FirstWeek = "twenty";
        entry.Read();

        Assert.Equal("twenty", entry.Steps[0].Gaits[Gait.Walk].FirstWeek);
        Assert.Null(entry.Plan.Steps[0].Walk);
        Assert.False(PlanRows.At(entry.Plan, PlanPlace.Start).HasOuting);
        Assert.Contains("“twenty”", entry.For("steps[0].walk"), StringComparison.Ordinal);
        Assert.Equal((1, 1, 0), (entry.ProblemCount, entry.ProblemsIn(0), entry.ProblemsIn(1)));
    }

    [Fact]
    public void Growth_without_a_first_week_is_not_guessed()
    {
        PlanEntry entry = PlanEntry.Of(HorseInRehab.Plan);
        entry.Steps[0].Gaits[Gait.Trot].FirstWeek = "";
        entry.Steps[0].Gaits[Gait.Trot].Growth = "2";
        entry.Read();

        Assert.Null(entry.Plan.Steps[0].Trot);
        Assert.NotNull(entry.For("steps[0].trot"));
    }

    [Fact]
    public void A_step_moves_by_one_place_and_stays_at_the_ends()
    {
        PlanEntry entry = PlanEntry.Of(HorseInRehab.Plan);
        StepEntry first = entry.Steps[0];

        entry.Move(first, -1);
        Assert.Same(first, entry.Steps[0]);
        entry.Move(first, 1);
        entry.Move(first, 1);
        entry.Read();

        Assert.Equal(["first trot", "walk in hand"], entry.Plan.Steps.Select(step => step.Name));
        Assert.NotNull(entry.For("steps[1].gate"));
    }
}
