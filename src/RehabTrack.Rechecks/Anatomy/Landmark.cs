namespace RehabTrack.Rechecks.Anatomy;

/// <summary>Where the tape starts.</summary>
public enum Landmark
{
    /// <summary>Point of hock (calcaneal tuber), hind limb.</summary>
    PointOfHock,

    /// <summary>Distal border of the accessory carpal bone, fore limb.</summary>
    AccessoryCarpalBone,

    /// <summary>Tarsometatarsal joint, hind limb.</summary>
    TarsometatarsalJoint,
}
