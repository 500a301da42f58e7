namespace RehabTrack.Rechecks.Permits;

/// <summary>How the work done on a day or in a week stands against the permit.</summary>
public enum AdherenceStanding
{
    /// <summary>Nobody entered a log.</summary>
    NoLog,

    /// <summary>No permit is known to hold it against.</summary>
    NoPermit,

    /// <summary>Within the permit.</summary>
    Within,

    /// <summary>Less than the share of the setting of what was permitted.</summary>
    Under,

    /// <summary>More than was permitted, in one respect at least.</summary>
    Over,
}
