namespace RehabTrack.Rechecks.Repeats;

/// <summary>How much repeats of one thing differ.</summary>
public sealed record RepeatError
{
    /// <summary>Subjects with at least two values.</summary>
    public required int Subjects { get; init; }

    /// <summary>Values of those subjects.</summary>
    public required int Values { get; init; }

    /// <summary>Values less the means they are compared with: what the SD rests on, at least 1.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Mean of the values, in the size's unit.</summary>
    public required double Mean { get; init; }

    /// <summary>
    /// Within-subject SD s_w (the standard error of measurement): the root of the mean variance within subjects, weighted by degrees of
    /// freedom; for pairs <c>√(Σd²/2n)</c>. In the size's unit.
    /// </summary>
    public required double WithinStandardDeviation { get; init; }

    /// <summary>Lower end of its 95 % interval (chi-square), in the size's unit.</summary>
    public required double Lower95 { get; init; }

    /// <summary>Upper end of its 95 % interval (chi-square), in the size's unit.</summary>
    public required double Upper95 { get; init; }

    /// <summary>
    /// Coefficient of variation: the root of the mean of (variance / squared mean) of the subjects, weighted by degrees of freedom; null
    /// when a subject's mean is 0. What the error model takes, since the error grows with the size.
    /// </summary>
    public required double? Cv { get; init; }

    /// <summary>Smallest detectable change of two single values, 1.96·√2·s_w, in the size's unit.</summary>
    public required double DetectableChange { get; init; }

    /// <summary>
    /// Whether the scatter grows with the size beyond chance (rank correlation of spread and mean, one-sided 5 %): then the cv describes
    /// it and the SD does not.
    /// </summary>
    public required bool GrowsWithSize { get; init; }
}
