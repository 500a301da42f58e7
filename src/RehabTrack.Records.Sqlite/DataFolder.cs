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
    internal string ConnectionString =>
        new SqliteConnectionStringBuilder
        {
            DataSource = Database,
            ForeignKeys = true,
            DefaultTimeout = BusySeconds,
            Pooling = true,
        }.ToString();

    /// <summary>Makes the folder, readable for its owner only where the system knows owners.</summary>
    internal void Create()
    {
        if (Directory.Exists(Path))
        {
            return;
        }

        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(Path);
        }
        else
        {
            Directory.CreateDirectory(Path, OwnerOnly);
        }
    }
}
