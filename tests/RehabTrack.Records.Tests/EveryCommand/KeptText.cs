using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>Every text that a database file holds as a record, read without the program: cells, and whatever lies inside JSON.</summary>
internal static class KeptText
{
    /// <summary>The history and the answers repeat what was written: they prove nothing of the record itself.</summary>
    private static readonly string[] Echoes = ["Change", "AppliedCommand", "__EFMigrationsHistory", "__EFMigrationsLock"];

    public static HashSet<string> Of(string database)
    {
        using SqliteConnection connection = new($"Data Source={database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        HashSet<string> texts = new(StringComparer.Ordinal);
        foreach (string table in Tables(connection).Except(Echoes, StringComparer.Ordinal))
        {
            using SqliteCommand all = connection.CreateCommand();
            all.CommandText = $"SELECT * FROM \"{table}\"";
            using SqliteDataReader rows = all.ExecuteReader();
            while (rows.Read())
            {
                for (int column = 0; column < rows.FieldCount; column++)
                {
                    if (rows.GetValue(column) is string text)
                    {
                        Add(texts, text);
                    }
                }
            }
        }

        return texts;
    }

    /// <summary>How many lines the history has: what a change leaves behind, and a repeat does not.</summary>
    public static long Changes(string database)
    {
        using SqliteConnection connection = new($"Data Source={database};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using SqliteCommand count = connection.CreateCommand();
        count.CommandText = "SELECT COUNT(*) FROM \"Change\"";
        return (long)count.ExecuteScalar()!;
    }

    private static List<string> Tables(SqliteConnection connection)
    {
        using SqliteCommand names = connection.CreateCommand();
        names.CommandText = "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'";
        using SqliteDataReader rows = names.ExecuteReader();
        List<string> tables = [];
        while (rows.Read())
        {
            tables.Add(rows.GetString(0));
        }

        return tables;
    }

    private static void Add(HashSet<string> texts, string text)
    {
        texts.Add(text);
        if (text is not ['{' or '[', ..])
        {
            return;
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            Add(texts, document.RootElement);
        }
        catch (JsonException)
        {
            // A text that only begins like JSON.
        }
    }

    private static void Add(HashSet<string> texts, JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.String:
                texts.Add(element.GetString()!);
                break;
            case JsonValueKind.Array:
                foreach (JsonElement one in element.EnumerateArray())
                {
                    Add(texts, one);
                }

                break;
            case JsonValueKind.Object:
                foreach (JsonProperty one in element.EnumerateObject())
                {
                    Add(texts, one.Value);
                }

                break;
        }
    }
}
