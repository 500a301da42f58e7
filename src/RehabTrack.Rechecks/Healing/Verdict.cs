namespace RehabTrack.Rechecks.Healing;

/// <summary>What the successive examinations say, against measurement error.</summary>
public enum Verdict
{
    /// <summary>The lesion shrinks, by more than measurement wobbles.</summary>
    Healing,

    /// <summary>It shrinks, and more slowly than is acceptable.</summary>
    HealingSlowly,

    /// <summary>No progress: the rate is worse than the slowest acceptable one.</summary>
    Stalled,

    /// <summary>It grows, by more than measurement wobbles.</summary>
    Worsening,

    /// <summary>It has reached the target, all lesion levels read.</summary>
    AtTarget,

    /// <summary>Nothing can be said yet.</summary>
    NotYetReadable,
}
