namespace RehabTrack.Rechecks.Exercise;

/// <summary>
/// The minutes of one gait in an outing of a step: where they start, how they grow with every full week of effective time, and where
/// they end. A gait without a rule is unfilled and permits 0.
/// </summary>
/// <param name="Start">Minutes in the first week of the step, at least 0.</param>
/// <param name="GrowthPerWeek">Minutes added with every full week of effective time in the step, at least 0.</param>
/// <param name="Ceiling">The most it grows to, min. Null is unfilled: a rule that grows without a ceiling permits 0.</param>
public sealed record GaitRule(int Start, int GrowthPerWeek = 0, int? Ceiling = null)
{
    /// <summary>The minutes on a day of the step.</summary>
    /// <param name="days">Effective days in the step, at least 0; the first week is 0 to 6.</param>
    public int At(int days) =>
        GrowthPerWeek > 0
            ? Ceiling is { } most
                ? (int)Math.Min(most, Start + (long)GrowthPerWeek * (days / PlanRows.DaysOfWeek))
                : 0
            : Start;

    /// <summary>The most minutes that the rule ever permits.</summary>
    public int Most => GrowthPerWeek > 0 ? Ceiling ?? 0 : Start;
}
