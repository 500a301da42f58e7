namespace RehabTrack.Rechecks.Anatomy;

/// <summary>One of the four limbs. The codes LF, RF, LH, RH stand in <c>shared/anatomy.json</c>.</summary>
public enum Limb
{
    /// <summary>Not recorded.</summary>
    Unknown,

    /// <summary>Left fore (LF).</summary>
    LeftFore,

    /// <summary>Right fore (RF).</summary>
    RightFore,

    /// <summary>Left hind (LH).</summary>
    LeftHind,

    /// <summary>Right hind (RH).</summary>
    RightHind,
}
