namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The path along which levels are linked: a level is never linked from one path to another.</summary>
public enum LinkPath
{
    /// <summary>Origin and body: one path, since the border between them is a matter of habit.</summary>
    Axial,

    /// <summary>The medial branch.</summary>
    MedialBranch,

    /// <summary>The lateral branch.</summary>
    LateralBranch,

    /// <summary>A structure that is not divided into parts.</summary>
    Whole,
}
