using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Tests.Exercise;

public sealed class PlanPreviewTests
{
    private static PlanVersion Severe => PlanTemplates.Find("sdft-severe")!.ToPlan("1", 1);

    // From memory: Davis & Smith 2006. The table counts the first week as week 0.
    [Theory]
    [InlineData(1, 0, 0, 0)]
    [InlineData(5, 20, 0, 0)]
    [InlineData(9, 40, 0, 0)]
    [InlineData(14, 40, 5, 1)]
    [InlineData(22, 30, 15, 1)]
    [InlineData(30, 20, 25, 2)]
    public void The_severe_tendon_plan_runs_week_by_week(int week, int walk, int trot, int gates)
    {
        PlanWeek shown = Assert.Single(PlanPreview.From(Severe, PlanPlace.Start), one => one.FirstDay == 7 * week);

        Assert.Equal((walk, trot, 0, gates), (shown.Work.Day.Walk, shown.Work.Day.Trot, shown.Work.Day.Canter, shown.Gates));
    }

    [Fact]
    public void Weeks_follow_one_another_without_gap_for_49_weeks()
    {
        IReadOnlyList<PlanWeek> weeks = PlanPreview.From(Severe, PlanPlace.Start);

        Assert.Equal(0, weeks[0].FirstDay);
        Assert.All(weeks.Zip(weeks.Skip(1)), pair => Assert.Equal(pair.First.FirstDay + pair.First.Days, pair.Second.FirstDay));
        Assert.Equal(49 * 7, weeks[^1].FirstDay + weeks[^1].Days);
    }

    [Fact]
    public void From_within_a_week_the_first_row_is_the_rest_of_that_week()
    {
        IReadOnlyList<PlanWeek> weeks = PlanPreview.From(Severe, new PlanPlace(1, 10));

        Assert.Equal((0, 4, new PlanPlace(1, 10), 15), (weeks[0].FirstDay, weeks[0].Days, weeks[0].Place, weeks[0].Work.Day.Walk));
        Assert.Equal((4, 7, 20), (weeks[1].FirstDay, weeks[1].Days, weeks[1].Work.Day.Walk));
    }

    // FVMA Practitioner 2017, issue 4, p. 29: 2 min more with every full week, up to the ceiling that the vet enters.
    [Fact]
    public void The_last_step_is_shown_until_its_growth_ends()
    {
        PlanVersion template = PlanTemplates.Find("suspensory-hind-proximal-shock-wave")!.ToPlan("1", 1);
        PlanVersion plan = template with { Steps = [template.Steps[0], template.Steps[1] with { Trot = new GaitRule(0, 2, 20) }] };
        PlanWeek[] trot = [.. PlanPreview.From(plan, PlanPlace.Start).Where(week => week.Place.Step == 1)];

        Assert.Equal([0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20], trot.Select(week => week.Work.Day.Trot));
    }

    [Fact]
    public void Growth_without_a_ceiling_shows_none()
    {
        PlanVersion plan = PlanTemplates.Find("suspensory-hind-proximal-shock-wave")!.ToPlan("1", 1);

        Assert.All(PlanPreview.From(plan, PlanPlace.Start), week => Assert.Equal(0, week.Work.Day.Trot));
    }

    [Fact]
    public void A_draft_with_impossible_lengths_still_ends()
    {
        PlanStep step = new() { Name = "", ShortestDays = int.MaxValue };
        PlanVersion plan = Severe with { Steps = [step with { ShortestDays = -4 }, step, step] };

        IReadOnlyList<PlanWeek> weeks = PlanPreview.From(plan, PlanPlace.Start);

        Assert.Equal(1, weeks[0].Days);
        Assert.Equal(PlanPreview.MostDays, weeks[^1].FirstDay + weeks[^1].Days);
    }

    [Fact]
    public void A_place_that_the_plan_does_not_have_has_no_weeks() =>
        Assert.Empty(PlanPreview.From(Severe, new PlanPlace(Severe.Steps.Count, 0)));
}
