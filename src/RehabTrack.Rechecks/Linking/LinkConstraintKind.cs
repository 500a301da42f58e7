namespace RehabTrack.Rechecks.Linking;

/// <summary>A person's word on a link.</summary>
public enum LinkConstraintKind
{
    /// <summary>The two places are the same: a hard constraint.</summary>
    Pin,

    /// <summary>The two places are not the same: forbidden.</summary>
    Break,
}
