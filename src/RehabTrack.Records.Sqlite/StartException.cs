namespace RehabTrack.Records.Sqlite;

/// <summary>The database cannot be used; starting stops with a message, and nothing was changed.</summary>
public sealed class StartException : Exception
{
    internal StartException(StartTrouble trouble, string database, string message, Exception? inner = null)
        : base(message, inner)
    {
        Trouble = trouble;
        Database = database;
    }

    /// <summary>Why.</summary>
    public StartTrouble Trouble { get; }

    /// <summary>The database file.</summary>
    public string Database { get; }
}
