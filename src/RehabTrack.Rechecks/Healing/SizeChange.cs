namespace RehabTrack.Rechecks.Healing;

/// <summary>One size of one place at two dates, against what measurement alone would do.</summary>
public sealed record SizeChange
{
    /// <summary>What was measured.</summary>
    public required MeasuredSize Size { get; init; }

    /// <summary>The value at the earlier date, in the size's unit, at least 0.</summary>
    public required double Before { get; init; }

    /// <summary>The value at the later date, in the size's unit, at least 0.</summary>
    public required double Now { get; init; }

    /// <summary>A value below this one is a detectable fall from <see cref="Before"/>, in the size's unit, at least 0.</summary>
    public required double DetectableBelow { get; init; }

    /// <summary>A value above this one is a detectable rise from <see cref="Before"/>, in the size's unit.</summary>
    public required double DetectableAbove { get; init; }

    /// <summary>The change, % of the earlier value; null when that is 0.</summary>
    public double? ChangePercent => PercentOf(Now);

    /// <summary>
    /// The smallest detectable change in the direction of the change, % of the earlier value, negative for a fall; null when the earlier
    /// value is 0. Without a change, the rise.
    /// </summary>
    public double? DetectablePercent => PercentOf(Now < Before ? DetectableBelow : DetectableAbove);

    /// <summary>
    /// The smallest overall error rate at which the change still counts, 0 to 1, where it was judged together with other levels and looks
    /// (<see cref="LevelComparison"/>); null where it was judged alone.
    /// </summary>
    public double? AdjustedProbability { get; init; }

    /// <summary>What can be claimed.</summary>
    public ChangeClaim Claim =>
        Now < DetectableBelow ? ChangeClaim.RealFall
        : Now > DetectableAbove ? ChangeClaim.RealRise
        : ChangeClaim.CannotTell;

    /// <summary>Whether the change is larger than measurement alone would make it.</summary>
    public bool IsDetectable => Claim != ChangeClaim.CannotTell;

    private double? PercentOf(double value) => Before > 0 ? 100 * ((value / Before) - 1) : null;
}
