namespace RehabTrack.Rechecks.Findings;

/// <summary>How much a finding asks of a person.</summary>
public enum FindingSeverity
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>A person must look.</summary>
    Amber,

    /// <summary>A person must act.</summary>
    Red,
}
