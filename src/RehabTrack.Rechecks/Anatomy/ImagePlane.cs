namespace RehabTrack.Rechecks.Anatomy;

/// <summary>The plane of an image.</summary>
public enum ImagePlane
{
    /// <summary>Across the fibres: areas, thickness, width, echogenicity.</summary>
    ShortAxis,

    /// <summary>Along the fibres: fibre alignment, thickness.</summary>
    LongAxis,
}
