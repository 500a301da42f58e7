namespace RehabTrack.Rechecks.Anatomy;

/// <summary>Facts of anatomy that the computation needs.</summary>
public static class AnatomyRules
{
    /// <summary>The path along which levels of this part are linked. Origin and body share one path; each branch is its own.</summary>
    public static LinkPath PathOf(Part part) =>
        part switch
        {
            Part.Origin or Part.Body => LinkPath.Axial,
            Part.MedialBranch => LinkPath.MedialBranch,
            Part.LateralBranch => LinkPath.LateralBranch,
            Part.Whole => LinkPath.Whole,
        };

    /// <summary>Whether the limb is a hind limb; false when it is not known.</summary>
    public static bool IsHind(Limb limb) => limb is Limb.LeftHind or Limb.RightHind;

    /// <summary>The same limb on the other side; <see cref="Limb.Unknown"/> stays unknown.</summary>
    public static Limb OtherSide(Limb limb) =>
        limb switch
        {
            Limb.LeftFore => Limb.RightFore,
            Limb.RightFore => Limb.LeftFore,
            Limb.LeftHind => Limb.RightHind,
            Limb.RightHind => Limb.LeftHind,
            Limb.Unknown => Limb.Unknown,
        };

    /// <summary>Where a tape can start on the limb, in the order of the table; all of them when the limb is not known.</summary>
    public static IEnumerable<Landmark> LandmarksOf(Limb limb) =>
        Enum.GetValues<Landmark>().Where(landmark => limb == Limb.Unknown || (landmark == Landmark.AccessoryCarpalBone) != IsHind(limb));

    /// <summary>
    /// The landmark that is usual for the limb: point of hock behind, accessory carpal bone in front; null when the limb is not known.
    /// </summary>
    public static Landmark? UsualLandmark(Limb limb) =>
        limb switch
        {
            Limb.LeftHind or Limb.RightHind => Landmark.PointOfHock,
            Limb.LeftFore or Limb.RightFore => Landmark.AccessoryCarpalBone,
            Limb.Unknown => null,
        };
}
