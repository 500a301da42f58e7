namespace RehabTrack.Rechecks.Exams;

/// <summary>What is known of the same ligament of the other limb: injury is often on both sides, and an injured limb is no reference.</summary>
public enum OtherLimb
{
    /// <summary>Nothing was said: its readings count as sound.</summary>
    NotRecorded,

    /// <summary>Sound.</summary>
    Sound,

    /// <summary>It has a lesion too: its readings are no reference.</summary>
    HasLesion,
}
