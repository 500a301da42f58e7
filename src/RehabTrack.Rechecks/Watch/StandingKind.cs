namespace RehabTrack.Rechecks.Watch;

/// <summary>What stands and needs a person, of a case or of the horse's exercise.</summary>
public enum StandingKind
{
    /// <summary>What the analysis of a case says: a setback, a new lesion, no progress, another measurer or stance, an uncertain link.</summary>
    OfCase,

    /// <summary>A concern, or a sign in a log, that no vet has answered with a signature.</summary>
    ConcernOpen,

    /// <summary>An examination that nobody signed yet shows a setback.</summary>
    UnsignedSetback,

    /// <summary>What the last decision rested on was changed.</summary>
    BasisChanged,

    /// <summary>The vet who signed last is no longer with the practice.</summary>
    VetWithdrawn,

    /// <summary>A gate's date passed and an open case was not examined since.</summary>
    GateNotExamined,

    /// <summary>A recheck is overdue.</summary>
    RecheckOverdue,

    /// <summary>More was done than permitted.</summary>
    OverExercise,

    /// <summary>Work is permitted, and nobody has entered a log for a week or more.</summary>
    NoLog,

    /// <summary>Out of work, or without a log, for so long that a vet's word is needed.</summary>
    AwayTooLong,
}
