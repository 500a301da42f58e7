namespace RehabTrack.Rechecks.Permits;

/// <summary>How clear a sign is that a rider or handler sees.</summary>
public enum SignGrade
{
    /// <summary>Not checked; never the same as none.</summary>
    NotChecked,

    /// <summary>Checked, none.</summary>
    None,

    /// <summary>Slight.</summary>
    Slight,

    /// <summary>Clear.</summary>
    Clear,

    /// <summary>Severe.</summary>
    Severe,
}
