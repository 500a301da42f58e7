using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Sqlite;

/// <summary>A full or failing disk, as SQLite reports it. The transaction is rolled back: nothing of it is kept.</summary>
internal sealed class SqliteTrouble : IStoreTrouble
{
    private static readonly Problem Full = new("", "disk-full");
    private static readonly Problem Failing = new("", "disk-trouble");

    public Problem? Of(Exception broken) =>
        (broken as SqliteException ?? broken.InnerException as SqliteException)?.SqliteErrorCode switch
        {
            SQLitePCL.raw.SQLITE_FULL => Full,
            SQLitePCL.raw.SQLITE_IOERR or SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_CANTOPEN => Failing,
            _ => null,
        };

    /// <summary>Whether the trouble is what stands in the file, and not the machine.</summary>
    public static bool IsDamage(SqliteException broken) =>
        broken.SqliteErrorCode is SQLitePCL.raw.SQLITE_CORRUPT or SQLitePCL.raw.SQLITE_NOTADB;
}
