namespace RehabTrack.Records.Imports;

/// <summary>How an examination of a file stands to what is kept.</summary>
public enum ExaminationStanding
{
    /// <summary>Not here yet.</summary>
    New,

    /// <summary>Here already, the same.</summary>
    Known,

    /// <summary>Here, and the file says something else or more.</summary>
    Differs,
}
