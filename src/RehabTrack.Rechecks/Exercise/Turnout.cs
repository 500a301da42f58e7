namespace RehabTrack.Rechecks.Exercise;

/// <summary>How free the horse may stand, least first. Unfilled is the box.</summary>
public enum Turnout
{
    /// <summary>In the box.</summary>
    None,

    /// <summary>A paddock too small to canter in.</summary>
    SmallPaddock,

    /// <summary>A field.</summary>
    Field,
}
