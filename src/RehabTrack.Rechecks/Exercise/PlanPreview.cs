namespace RehabTrack.Rechecks.Exercise;

/// <summary>
/// A plan week by week as it would run if every day counted and every gate were passed on the day it comes. It shows what is written; it
/// permits nothing.
/// </summary>
public static class PlanPreview
{
    /// <summary>The longest preview, in days: 104 weeks.</summary>
    public const int MostDays = 104 * PlanRows.DaysOfWeek;

    /// <summary>
    /// The weeks from a place on. The last step is shown for its shortest length, and longer while its minutes still grow. None when the
    /// plan has no such place.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="start">The place.</param>
    public static IReadOnlyList<PlanWeek> From(PlanVersion plan, PlanPlace start)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<PlanWeek> weeks = [];
        if (start.Step < 0 || start.Step >= plan.Steps.Count || start.Days < 0)
        {
            return weeks;
        }

        int day = 0;
        int gates = 0;
        for (int step = start.Step; step < plan.Steps.Count && day < MostDays; step++)
        {
            int inStep = step == start.Step ? start.Days : 0;
            int end = Math.Max(inStep + 1, LengthOf(plan, step));
            while (inStep < end && day < MostDays)
            {
                int days = Math.Min(PlanRows.DaysOfWeek - (inStep % PlanRows.DaysOfWeek), Math.Min(end - inStep, MostDays - day));
                PlanPlace place = new(step, inStep);
                weeks.Add(new PlanWeek(day, days, place, PlanRows.At(plan, place), gates));
                day += days;
                inStep += days;
            }

            gates += plan.Steps[step].Gate is null ? 0 : 1;
        }

        return weeks;
    }

    private static int LengthOf(PlanVersion plan, int index)
    {
        PlanStep step = plan.Steps[index];
        if (index < plan.Steps.Count - 1)
        {
            return step.ShortestDays;
        }

        long grown = PlanRows.Gaits.Max(gait =>
            step.Of(gait) is { GrowthPerWeek: > 0, Ceiling: { } ceiling } rule && ceiling > rule.Start
                ? PlanRows.DaysOfWeek * (1 + ((ceiling - (long)rule.Start + rule.GrowthPerWeek - 1) / rule.GrowthPerWeek))
                : 0
        );
        return (int)Math.Min(MostDays, Math.Max(step.ShortestDays, grown));
    }
}
