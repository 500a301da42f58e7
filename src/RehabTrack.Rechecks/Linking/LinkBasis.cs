namespace RehabTrack.Rechecks.Linking;

/// <summary>Where a link comes from.</summary>
public enum LinkBasis
{
    /// <summary>The first reading of its track: there is nothing to link to.</summary>
    First,

    /// <summary>The program holds it to be the same place.</summary>
    Computed,

    /// <summary>A person pinned it.</summary>
    Pinned,
}
