namespace RehabTrack.Rechecks.Healing;

/// <summary>One size of one place at two dates, on the scale on which it is compared.</summary>
internal sealed record SizeDifference(MeasuredSize Size, double Before, double Now, WorkingScale Scale, double StandardDeviation)
{
    /// <summary>The change in standard deviations of a difference; without any error a change of any size is beyond all of them.</summary>
    public double Deviations =>
        Scale.ToScale(Now) - Scale.ToScale(Before) is var change && StandardDeviation > 0 ? change / StandardDeviation
        : change == 0 ? 0
        : Math.CopySign(double.PositiveInfinity, change);

    /// <summary>The change against so many standard deviations of a difference.</summary>
    public SizeChange Against(double factor, double? adjustedProbability)
    {
        double y = Scale.ToScale(Before);
        double detectable = factor * StandardDeviation;
        return new SizeChange
        {
            Size = Size,
            Before = Before,
            Now = Now,
            // There and back the scale rounds: no change is never a change.
            DetectableBelow = Math.Clamp(Scale.FromScale(y - detectable), 0, Before),
            DetectableAbove = Math.Max(Before, Scale.FromScale(y + detectable)),
            AdjustedProbability = adjustedProbability,
        };
    }
}
