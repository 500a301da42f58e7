namespace RehabTrack.Records.Imports;

/// <summary>In what two horses are alike, most telling first.</summary>
public enum HorseLikeness
{
    /// <summary>The same chip, another name.</summary>
    SameChip,

    /// <summary>The same name, and nothing that speaks against it; there are several such.</summary>
    SameName,

    /// <summary>The same name, another chip or birth.</summary>
    SameNameOtherMark,

    /// <summary>A name that differs by a letter.</summary>
    SimilarName,
}
