namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// How the two dates of a comparison were chosen, and among how many: the more often one looks, the larger a change must be before it is
/// called real. The default is one comparison named beforehand.
/// </summary>
public readonly record struct Looks
{
    private readonly LookFamily family;
    private readonly int rechecks;

    private Looks(LookFamily family, int rechecks)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rechecks, 1);
        this.family = family;
        this.rechecks = rechecks;
    }

    /// <summary>One comparison named beforehand.</summary>
    public static Looks Once => default;

    /// <summary>Every recheck against the baseline (Dunnett 1955).</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static Looks WithBaseline(int rechecks) => new(LookFamily.WithBaseline, rechecks);

    /// <summary>Every examination against the one before it.</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static Looks Neighbouring(int rechecks) => new(LookFamily.Neighbouring, rechecks);

    /// <summary>Any two dates, chosen by looking (Tukey's studentised range over √2).</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static Looks AnyTwo(int rechecks) => new(LookFamily.AnyTwo, rechecks);

    /// <summary>
    /// The chance that a place that does not change shows, at one or more of the looks, a difference at least so many of its standard
    /// deviations large; 0 to 1, falling as the difference grows.
    /// </summary>
    /// <param name="deviations">The difference in standard deviations of a difference; its sign does not matter.</param>
    public double Probability(double deviations) => ComparisonFactors.Exceeding(family, rechecks, Math.Abs(deviations));

    /// <summary>How many standard deviations of a difference are exceeded with that probability: the inverse of <see cref="Probability"/>.</summary>
    /// <param name="probability">Above 0 and at most .5; .05 gives the factors of <see cref="ComparisonFactors"/>.</param>
    public double Factor(double probability) => ComparisonFactors.Of(family, rechecks, probability);
}
