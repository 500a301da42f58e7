namespace RehabTrack.Rechecks.Suggestions;

/// <summary>The step up that is asked about.</summary>
public enum AskedStep
{
    /// <summary>More of the work done now.</summary>
    More,

    /// <summary>Trot for the first time.</summary>
    Trot,

    /// <summary>Canter or gallop.</summary>
    CanterOrGallop,
}
