namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The part of a structure in which a level lies.</summary>
public enum Part
{
    /// <summary>Proximal attachment.</summary>
    Origin,

    /// <summary>Between origin and division; the border to the origin is a matter of habit.</summary>
    Body,

    /// <summary>Medial branch, from the division to its sesamoid bone.</summary>
    MedialBranch,

    /// <summary>Lateral branch, from the division to its sesamoid bone.</summary>
    LateralBranch,

    /// <summary>A structure that is not divided into parts.</summary>
    Whole,
}
