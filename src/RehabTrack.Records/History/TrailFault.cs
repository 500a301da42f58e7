namespace RehabTrack.Records.History;

/// <summary>Why a line of the trail does not fit.</summary>
public enum TrailFault
{
    /// <summary>Its hash is not that of what it says: it was changed, or put in.</summary>
    Changed,

    /// <summary>It is not there, although a later one is.</summary>
    Missing,

    /// <summary>It does not continue from the line before it: lines were exchanged, or one was put in.</summary>
    OutOfOrder,

    /// <summary>It has no number: it was put in past the program.</summary>
    WithoutNumber,

    /// <summary>Its words are gone, and no later line says that they were erased.</summary>
    EmptiedUnsaid,

    /// <summary>The trail does not hold the line that was noted earlier: its end was cut off, or all of it written anew.</summary>
    NotAsNoted,
}
