namespace RehabTrack.Rechecks.Exams;

/// <summary>A point of the ligament that is the same at every examination, and can be seen.</summary>
public enum FixedPointKind
{
    /// <summary>Where the ligament arises.</summary>
    Origin,

    /// <summary>Where it divides into its branches.</summary>
    Division,

    /// <summary>Where the medial branch inserts on its sesamoid bone.</summary>
    MedialInsertion,

    /// <summary>Where the lateral branch inserts on its sesamoid bone.</summary>
    LateralInsertion,
}
