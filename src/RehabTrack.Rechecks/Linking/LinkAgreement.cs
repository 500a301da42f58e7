namespace RehabTrack.Rechecks.Linking;

/// <summary>Density of a difference between readings of one place over that between unrelated places, with a largest penalty.</summary>
internal readonly struct LinkAgreement
{
    private readonly double _atZero;
    private readonly double _curvature;
    private readonly double _cap;
    private readonly double _capOdds;

    /// <param name="deviation">SD of the difference of two readings of one place.</param>
    /// <param name="share">The sum of one over the number of readings on either side; 2 for two readings.</param>
    /// <param name="background">SD between unrelated places.</param>
    /// <param name="cap">The largest penalty.</param>
    public LinkAgreement(double deviation, double share, double background, double cap)
    {
        double variance = 0.5 * deviation * deviation * share;
        double backgroundVariance = background * background;
        _atZero = 0.5 * Math.Log(backgroundVariance / variance);
        _curvature = 0.5 * ((1 / variance) - (1 / backgroundVariance));
        _cap = cap;
        _capOdds = Math.Exp(-cap);
    }

    /// <summary>The log of the ratio, at least minus the cap.</summary>
    public double LogOdds(double difference) => Math.Max(_atZero - (_curvature * difference * difference), -_cap);

    /// <summary>The ratio.</summary>
    public double Odds(double difference)
    {
        double logOdds = _atZero - (_curvature * difference * difference);
        return logOdds > -_cap ? Math.Exp(logOdds) : _capOdds;
    }
}
