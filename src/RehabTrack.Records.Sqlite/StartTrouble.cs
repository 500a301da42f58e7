namespace RehabTrack.Records.Sqlite;

/// <summary>Why the database cannot be used.</summary>
public enum StartTrouble
{
    /// <summary>A newer version of the program wrote it: use that version, or a data folder of its own.</summary>
    NewerDatabase,

    /// <summary>An older version wrote it, and this one has not been started on it yet.</summary>
    OlderDatabase,

    /// <summary>There is no database in the folder.</summary>
    NoDatabase,

    /// <summary>Another start works on it and did not end in time.</summary>
    StartingElsewhere,

    /// <summary>The file is not one of this program's databases, or is damaged.</summary>
    NotOurs,
}
