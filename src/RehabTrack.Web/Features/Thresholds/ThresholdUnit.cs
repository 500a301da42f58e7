namespace RehabTrack.Web.Features.Thresholds;

/// <summary>How a threshold is written in the form.</summary>
public enum ThresholdUnit
{
    /// <summary>As it is kept.</summary>
    Plain,

    /// <summary>A share, written as per cent.</summary>
    Percent,

    /// <summary>A rate in log per 60 days, below 0, written as the per cent by which a size falls in 60 days.</summary>
    PercentFall,
}
