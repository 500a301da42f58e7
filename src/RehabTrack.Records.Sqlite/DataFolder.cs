using Microsoft.Data.Sqlite;

namespace RehabTrack.Records.Sqlite;

/// <summary>The folder that holds everything kept: the database, its log beside it, and the lock of starting up.</summary>
public sealed class DataFolder
{
    /// <summary>Name of the database file.</summary>
    public const string DatabaseName = "rehabtrack.db";

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const int BusySeconds = 30;

    /// <summary>A data folder; nothing is made yet.</summary>
    /// <param name="path">Where; relative to the working directory.</param>
    public DataFolder(string path)
    {
        Path = System.IO.Path.GetFullPath(path);
    }

    /// <summary>The full path.</summary>
    public string Path { get; }

    /// <summary>The database file.</summary>
    public string Database => System.IO.Path.Combine(Path, DatabaseName);

    internal string Lock => System.IO.Path.Combine(Path, "starting.lock");

    /// <summary>How it is opened: foreign keys on, waiting for a writer up to half a minute.</summary>
    internal string ConnectionString => Connection(pooling: true);

    /// <summary>The same for a database that is gone soon: its file is free again when it is closed.</summary>
    internal string ConnectionStringUnpooled => Connection(pooling: false);

    /// <summary>Makes the folder.</summary>
    internal void Create() => CreateOwned(Path);

    /// <summary>Makes a folder that is not there, readable for its owner only where the system knows owners.</summary>
    internal static void CreateOwned(string folder)
    {
        if (Directory.Exists(folder))
        {
            return;
        }

        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, OwnerOnly);
        }
    }

    private string Connection(bool pooling) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = Database,
            ForeignKeys = true,
            DefaultTimeout = BusySeconds,
            Pooling = pooling,
        }.ToString();
}
