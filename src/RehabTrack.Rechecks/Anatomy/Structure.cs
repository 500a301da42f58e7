namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The structure that is injured.</summary>
public enum Structure
{
    /// <summary>Not recorded.</summary>
    Unknown,

    /// <summary>Suspensory ligament.</summary>
    SuspensoryLigament,

    /// <summary>Superficial digital flexor tendon (SDFT).</summary>
    SuperficialDigitalFlexorTendon,

    /// <summary>Deep digital flexor tendon (DDFT).</summary>
    DeepDigitalFlexorTendon,

    /// <summary>Accessory ligament of the deep digital flexor tendon.</summary>
    AccessoryLigamentOfDeepDigitalFlexorTendon,

    /// <summary>Another structure, named in the notes.</summary>
    Other,
}
