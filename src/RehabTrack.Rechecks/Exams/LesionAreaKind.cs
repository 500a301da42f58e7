namespace RehabTrack.Rechecks.Exams;

/// <summary>What is known of a lesion area.</summary>
public enum LesionAreaKind
{
    /// <summary>Not recorded. Absent is absent, never zero.</summary>
    Unknown,

    /// <summary>An area was traced; 0 means looked, none seen.</summary>
    Measured,

    /// <summary>The lesion is there and cannot be outlined; not zero (ECM 330).</summary>
    Diffuse,
}
