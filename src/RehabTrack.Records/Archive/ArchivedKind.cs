namespace RehabTrack.Records.Archive;

/// <summary>What can be put away, and brought back.</summary>
public enum ArchivedKind
{
    /// <summary>Horses.</summary>
    Horse,

    /// <summary>People.</summary>
    Person,

    /// <summary>Cases.</summary>
    Case,

    /// <summary>Drafts of examinations.</summary>
    Draft,

    /// <summary>Treatments, medicines and signs.</summary>
    Care,

    /// <summary>Cover that was taken back.</summary>
    Cover,

    /// <summary>Repeat tracings of the practice's own error.</summary>
    Repeats,
}
