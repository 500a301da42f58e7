namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The codes of limbs, structures, parts, landmarks and planes in files.</summary>
public static class AnatomyCodes
{
    /// <summary>LF, RF, LH, RH.</summary>
    public static CodeTable<Limb> Limbs { get; } = CodeTable<Limb>.Load("limb");

    /// <summary>Structures, for example <c>suspensory-ligament</c>.</summary>
    public static CodeTable<Structure> Structures { get; } = CodeTable<Structure>.Load("structure");

    /// <summary>Parts, for example <c>medial-branch</c>.</summary>
    public static CodeTable<Part> Parts { get; } = CodeTable<Part>.Load("part");

    /// <summary>Landmarks, for example <c>point-of-hock</c>.</summary>
    public static CodeTable<Landmark> Landmarks { get; } = CodeTable<Landmark>.Load("landmark");

    /// <summary>Planes: <c>short-axis</c>, <c>long-axis</c>.</summary>
    public static CodeTable<ImagePlane> Planes { get; } = CodeTable<ImagePlane>.Load("plane");
}
