namespace RehabTrack.Rechecks.Exams;

/// <summary>The role of a reading in the triplet that documents a lesion.</summary>
public enum ReadingRole
{
    /// <summary>Not part of a triplet.</summary>
    None,

    /// <summary>Normal tissue proximal to the lesion.</summary>
    NormalAbove,

    /// <summary>The worst level of the lesion.</summary>
    Worst,

    /// <summary>The first normal level distal to the lesion.</summary>
    NormalBelow,
}
