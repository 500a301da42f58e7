namespace RehabTrack.Rechecks.Exams;

/// <summary>The hardest gait of the work that a plan allows: a lesion may be asked to heal at another rate under each.</summary>
public enum PlanPhase
{
    /// <summary>Box rest or walk.</summary>
    Walk,

    /// <summary>Trot.</summary>
    Trot,

    /// <summary>Canter or gallop.</summary>
    CanterOrGallop,
}
