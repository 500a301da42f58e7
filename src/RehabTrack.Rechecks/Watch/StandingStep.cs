namespace RehabTrack.Rechecks.Watch;

/// <summary>What to do next about what stands.</summary>
public enum StandingStep
{
    /// <summary>Look at the case.</summary>
    LookAtCase,

    /// <summary>Say which places belong together.</summary>
    SettleLink,

    /// <summary>Sign a decision.</summary>
    Decide,

    /// <summary>Examine the horse.</summary>
    Examine,

    /// <summary>Book the recheck.</summary>
    Book,

    /// <summary>Call whoever works the horse.</summary>
    CallYard,
}
