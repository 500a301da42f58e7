namespace RehabTrack.Rechecks.Permits;

/// <summary>In which respect more was done than permitted.</summary>
public enum OverKind
{
    /// <summary>Minutes of a gait.</summary>
    Minutes,

    /// <summary>Outings of a day.</summary>
    Outings,

    /// <summary>Days with an outing in a week.</summary>
    Days,

    /// <summary>In a way that was not permitted, such as ridden.</summary>
    Mode,

    /// <summary>In circles that were not permitted.</summary>
    Circles,

    /// <summary>Over ground that was not permitted.</summary>
    Surface,

    /// <summary>Freer in the field than permitted.</summary>
    Turnout,
}
