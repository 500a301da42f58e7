namespace RehabTrack.Rechecks.Permits;

/// <summary>How a permit stands on its date.</summary>
public enum PermitState
{
    /// <summary>No work is signed.</summary>
    NothingSigned,

    /// <summary>The signed work, growing with effective time.</summary>
    Live,

    /// <summary>The signed work, and nothing grows.</summary>
    Held,

    /// <summary>The floor only: a concern, a sign in the log, or more than the days of the setting away.</summary>
    Floor,

    /// <summary>The floor only: a recheck was missed or the signature is over.</summary>
    Lapsed,

    /// <summary>No work for a time.</summary>
    Paused,

    /// <summary>No work until a vet signs: a vet's stop, or the vet withdrew.</summary>
    Stopped,

    /// <summary>The plan has ended.</summary>
    Closed,
}
