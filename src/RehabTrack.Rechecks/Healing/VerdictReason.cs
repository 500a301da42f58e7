namespace RehabTrack.Rechecks.Healing;

/// <summary>Why the verdict is what it is: the rule that spoke.</summary>
public enum VerdictReason
{
    /// <summary>No measure was recorded often enough to compare.</summary>
    NoMeasure,

    /// <summary>One examination: nothing to compare with.</summary>
    OnlyOneExamination,

    /// <summary>All examinations lie in the acute phase.</summary>
    AcutePhase,

    /// <summary>Two examinations whose difference lies inside the measurement error.</summary>
    TwoWithinError,

    /// <summary>Two examinations that differ downward by more than the error: a difference is not yet a trend.</summary>
    TwoBeyondErrorDown,

    /// <summary>The slope of the window lies above 0 by more than its error.</summary>
    RiseOfSlope,

    /// <summary>The latest lies above the best so far by more than the error and the absolute guard.</summary>
    RiseAboveBest,

    /// <summary>At or below the target with all lesion levels read.</summary>
    TargetReached,

    /// <summary>So small that it can no longer be measured, with all lesion levels read.</summary>
    NotMeasurable,

    /// <summary>The one-sided 95 % bound of the slope is worse than the slowest acceptable rate.</summary>
    BelowAcceptableRate,

    /// <summary>The slope falls by more than its error, and more slowly than is acceptable.</summary>
    FallsTooSlowly,

    /// <summary>The slope falls by more than its error.</summary>
    FallOfSlope,

    /// <summary>The slope is compatible with healing and with no progress.</summary>
    Undecided,

    /// <summary>The figures would say healing or target, but a lesion level was not read or its link is uncertain.</summary>
    WorstLevelNotRead,

    /// <summary>Grades fell over the course by more than chance.</summary>
    GradesBetter,

    /// <summary>Grades rose over the course by more than chance.</summary>
    GradesWorse,

    /// <summary>Grades alone do not settle it.</summary>
    GradesUndecided,

    /// <summary>Thickness without the other sound limb or a sound value of the horse has no acceptable rate.</summary>
    NoReference,
}
