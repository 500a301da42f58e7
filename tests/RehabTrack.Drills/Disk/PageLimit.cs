using System.Globalization;
using Microsoft.Data.Sqlite;
using RehabTrack.Records.Sqlite;

namespace RehabTrack.Drills.Disk;

/// <summary>
/// A database that may not grow, for where no small disk can be mounted: SQLite answers as on a full disk. The limit holds for a connection, so
/// each that lies in the pool gets it; the drill asks one thing after the other, which opens no more of them.
/// </summary>
internal sealed class PageLimit : IFullDisk
{
    private const int Connections = 4;
    private const long NoLimit = 1_000_000_000;
    private readonly DrillFolder folder = new();

    public string Kind => "a database that may not grow";

    public string Data => folder.Sub("data");

    public string? Copies => null;

    public void Fill(int spared) => Limit(pages => pages + spared);

    public void Free() => Limit(_ => NoLimit);

    public void Dispose() => folder.Dispose();

    private void Limit(Func<long, long> most)
    {
        SqliteConnection[] all =
        [
            .. Enumerable.Range(0, Connections).Select(_ => new SqliteConnection(new DataFolder(Data).ConnectionString)),
        ];
        foreach (SqliteConnection connection in all)
        {
            connection.Open();
            long pages = Ask(connection, "PRAGMA page_count");
            Ask(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count={most(pages)}"));
        }

        foreach (SqliteConnection connection in all)
        {
            connection.Dispose();
        }
    }

    private static long Ask(SqliteConnection connection, string question)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = question;
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
