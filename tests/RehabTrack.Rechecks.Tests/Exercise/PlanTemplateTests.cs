using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Tests.Exercise;

public sealed class PlanTemplateTests
{
    public static TheoryData<string> Names => [.. PlanTemplates.All.Select(template => template.Name)];

    [Fact]
    public void Every_plan_with_a_source_is_there() =>
        Assert.Equal(
            [
                "sdft-severe",
                "suspensory-body",
                "suspensory-hind-proximal-shock-wave",
                "suspensory-hind-proximal-surgery",
                "suspensory-origin-avulsion",
                "suspensory-proximal-general",
            ],
            PlanTemplates.All.Select(template => template.Name).Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Names))]
    public void A_template_can_be_signed_once_its_open_ceilings_are_entered(string name)
    {
        PlanTemplate template = PlanTemplates.Find(name)!;

        Assert.All(PlanRules.Check(template.ToPlan("a", 1)), problem => Assert.Equal("growth-without-ceiling", problem.Code));
        Assert.Null(template.ToPlan("a", 1).Floor);
    }

    [Fact]
    public void Only_trot_after_shock_wave_waits_for_a_ceiling() =>
        Assert.Equal(
            ["suspensory-hind-proximal-shock-wave steps[1].trot"],
            PlanTemplates.All.SelectMany(template =>
                PlanRules.Check(template.ToPlan("a", 1)).Select(problem => $"{template.Name} {problem.Field}")
            )
        );

    // Adams & Stashak 618, ECM 353, ECM 349: words without minutes.
    [Theory]
    [InlineData("suspensory-proximal-general")]
    [InlineData("suspensory-hind-proximal-surgery")]
    [InlineData("suspensory-body")]
    [InlineData("suspensory-origin-avulsion")]
    public void A_source_that_gives_words_without_minutes_permits_no_outing_until_filled_in(string name)
    {
        PlanVersion plan = PlanTemplates.Find(name)!.ToPlan("a", 1);

        Assert.All(
            Enumerable.Range(0, plan.Steps.Count),
            step => Assert.All(new[] { 0, 6, 7, 100 }, day => Assert.False(PlanRows.At(plan, new PlanPlace(step, day)).HasOuting))
        );
        Assert.Contains(plan.Steps, step => !PlanRows.IsFilled(step));
    }

    // Lower figures of the ranges: 2 to 4 and 4 to 6 weeks (FVMA 29), 3 to 6 weeks (ECM 349), 4 to 8 weeks (ECM 353).
    [Theory]
    [InlineData("suspensory-hind-proximal-surgery", 0, 14)]
    [InlineData("suspensory-hind-proximal-surgery", 1, 28)]
    [InlineData("suspensory-origin-avulsion", 0, 21)]
    [InlineData("suspensory-origin-avulsion", 1, 42)]
    [InlineData("suspensory-body", 0, 28)]
    [InlineData("suspensory-proximal-general", 0, 56)]
    [InlineData("suspensory-proximal-general", 1, 56)]
    [InlineData("suspensory-hind-proximal-shock-wave", 0, 70)]
    public void A_range_of_weeks_stands_at_its_lower_figure(string name, int step, int days) =>
        Assert.Equal(days, PlanTemplates.Find(name)!.Steps[step].ShortestDays);

    // From memory: Davis & Smith 2006.
    [Fact]
    public void The_severe_tendon_plan_lasts_48_weeks_with_scans_in_weeks_12_24_and_32()
    {
        PlanVersion plan = PlanTemplates.Find("sdft-severe")!.ToPlan("a", 1);
        int week = 0;
        List<int> gates = [];
        foreach (PlanStep step in plan.Steps)
        {
            week += step.ShortestDays / 7;
            if (step.Gate is not null)
            {
                gates.Add(week - 1);
            }
        }

        // Weeks count from 0, so 0 to 48 are 49.
        Assert.Equal(49, week);
        Assert.Equal([12, 24, 32], gates);
    }

    [Fact]
    public void Rest_is_filled_in_and_permits_nothing()
    {
        PlanStep rest = PlanTemplates.Find("sdft-severe")!.Steps[0];

        Assert.True(PlanRows.IsFilled(rest));
        Assert.Equal(Work.None, PlanRows.At(PlanTemplates.Find("sdft-severe")!.ToPlan("a", 1), PlanPlace.Start));
    }
}
