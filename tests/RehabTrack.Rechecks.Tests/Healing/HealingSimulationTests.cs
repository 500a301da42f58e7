using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// The bars of docs/methods/healing.md, on simulated cases with true links: six levels 2 cm apart, an examination every 60 days, five
/// looks. A bar counts as missed when the share found lies beyond it by more than chance explains (2.33 binomial standard errors).
/// docs/methods/healing.md holds what larger runs reached.
/// </summary>
public sealed class HealingSimulationTests
{
    private const int Cases = 200;

    [Fact]
    public void A_healing_lesion_is_rarely_called_stalled_or_worsening_and_mostly_called_healing()
    {
        Trend[][] cases = Simulate(1, Healing);
        AtMost(0.03, cases, looks => looks.Any(trend => trend.Verdict is Verdict.Stalled or Verdict.Worsening or Verdict.HealingSlowly));
        AtLeast(0.95, cases, looks => looks.Any(trend => trend.Verdict == Verdict.Healing));
    }

    [Fact]
    public void A_stall_is_named_by_the_second_or_third_examination_after_it_began()
    {
        Trend[][] cases = Simulate(2, Stalling);
        AtLeast(0.76, cases, looks => looks[2..4].Any(trend => trend.Verdict == Verdict.Stalled));
        AtLeast(0.90, cases, looks => looks[2..5].Any(trend => trend.Verdict == Verdict.Stalled));
    }

    [Fact]
    public void A_lesion_that_grows_by_a_fifth_in_60_days_is_named_and_never_called_healing()
    {
        Trend[][] cases = Simulate(3, Worsening);
        AtLeast(0.86, cases, looks => looks[2..4].Any(trend => trend.Verdict == Verdict.Worsening));
        AtLeast(0.96, cases, looks => looks[2..5].Any(trend => trend.Verdict == Verdict.Worsening));
        AtMost(
            0.01,
            cases,
            looks => looks[3..].Any(trend => trend.Verdict is Verdict.Healing or Verdict.HealingSlowly or Verdict.AtTarget)
        );
    }

    [Fact]
    public void A_lesion_that_never_changes_is_rarely_called_healing_or_worsening()
    {
        Trend[][] cases = Simulate(4, lesion => lesion.Course(5, _ => 1));
        AtMost(0.06, cases, looks => looks.Any(trend => trend.Verdict is Verdict.Healing or Verdict.HealingSlowly or Verdict.AtTarget));
        AtMost(0.08, cases, looks => looks.Any(trend => trend.Verdict == Verdict.Worsening));
        AtLeast(0.95, cases, looks => looks.Any(trend => trend.Verdict == Verdict.Stalled));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    public void The_interval_of_the_slope_holds_the_true_rate_as_often_as_it_says(int examinations)
    {
        double share = Coverage(examinations, 1);
        Assert.InRange(share, 0.93 - Margin(0.93), 0.99 + Margin(0.99));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void The_interval_still_holds_when_the_error_is_half_as_large_again_as_assumed(int examinations) =>
        Assert.True(Coverage(examinations, 1.5) >= 0.88 - Margin(0.88));

    private static CaseCourse Healing(SimulatedLesion lesion)
    {
        double halfLife = lesion.HalfLife(160);
        double floor = lesion.Floor();
        return lesion.Course(5, day => floor + ((1 - floor) * Math.Pow(2, -day / halfLife)));
    }

    // Heals until the second examination, then stays.
    private static CaseCourse Stalling(SimulatedLesion lesion)
    {
        double halfLife = lesion.HalfLife(160);
        return lesion.Course(5, day => Math.Pow(2, -Math.Min(day, 60) / halfLife));
    }

    // Heals until the second examination, then grows by a fifth in 60 days.
    private static CaseCourse Worsening(SimulatedLesion lesion)
    {
        double halfLife = lesion.HalfLife(160);
        return lesion.Course(5, day => Math.Pow(2, -Math.Min(day, 60) / halfLife) * Math.Pow(1.22, Math.Max(0, day - 60) / 60));
    }

    private static double Coverage(int examinations, double errorFactor)
    {
        const double rate = -0.25;
        SimulatedLesion lesion = new(100 + examinations, errorFactor);
        int held = 0;
        for (int i = 0; i < Cases; i++)
        {
            CaseCourse course = lesion.Course(examinations, day => Math.Exp(rate * day / 60));
            SlopeFigures slope = CourseBuilder.Analysed(course).Trend.Course!;
            held += slope.Lower95Log <= rate && rate <= slope.Upper95Log ? 1 : 0;
        }

        return held / (double)Cases;
    }

    private static Trend[][] Simulate(int seed, Func<SimulatedLesion, CaseCourse> make)
    {
        SimulatedLesion lesion = new(seed);
        return [.. Enumerable.Range(0, Cases).Select(_ => SimulatedLesion.Looks(make(lesion)))];
    }

    private static void AtLeast(double bar, Trend[][] cases, Func<Trend[], bool> said)
    {
        double share = cases.Count(said) / (double)cases.Length;
        Assert.True(share >= bar - Margin(bar), $"{share} is below {bar}");
    }

    private static void AtMost(double bar, Trend[][] cases, Func<Trend[], bool> said)
    {
        double share = cases.Count(said) / (double)cases.Length;
        Assert.True(share <= bar + Margin(bar), $"{share} is above {bar}");
    }

    private static double Margin(double bar) => 2.33 * Math.Sqrt(bar * (1 - bar) / Cases);
}
