using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;
using RehabTrack.Records.Sqlite;

namespace RehabTrack.Drills.Copies;

/// <summary>Compares two databases row by row.</summary>
internal static class TableDigest
{
    public static IEnumerable<string> Differing(string folder, string other)
    {
        SortedDictionary<string, string> one = Of(folder);
        SortedDictionary<string, string> two = Of(other);
        return one
            .Keys.Union(two.Keys, StringComparer.Ordinal)
            .Where(table => one.GetValueOrDefault(table) != two.GetValueOrDefault(table))
            .Select(table => $"table {table} differs");
    }

    private static SortedDictionary<string, string> Of(string folder)
    {
        using SqliteConnection connection = new(
            new SqliteConnectionStringBuilder { DataSource = new DataFolder(folder).Database, Pooling = false }.ToString()
        );
        connection.Open();
        SortedDictionary<string, string> digests = new(StringComparer.Ordinal);
        foreach (string table in Rows(connection, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%'"))
        {
            using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            foreach (string row in Rows(connection, $"SELECT * FROM \"{table}\" ORDER BY 1, 2"))
            {
                hash.AppendData(Encoding.UTF8.GetBytes(row));
            }

            digests.Add(table, Convert.ToHexStringLower(hash.GetHashAndReset()));
        }

        return digests;
    }

    private static List<string> Rows(SqliteConnection connection, string question)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = question;
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> rows = [];
        while (reader.Read())
        {
            rows.Add(
                string.Join(
                    '\u001f',
                    Enumerable
                        .Range(0, reader.FieldCount)
                        .Select(column =>
                            reader.GetValue(column) switch
                            {
                                byte[] bytes => Convert.ToHexStringLower(bytes),
                                var value => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
                            }
                        )
                )
            );
        }

        return rows;
    }
}
