using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.Data.Sqlite;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>Every text that a database file holds as a record, read without the program: cells, and whatever lies inside JSON.</summary>
internal static class KeptText
{
    /// <summary>The history and the answers repeat what was written: they prove nothing of the record itself.</summary>
    private static readonly string[] Echoes = ["Change", "AppliedCommand", "__EFMigrationsHistory", "__EFMigrationsLock"];

    private static readonly ConcurrentDictionary<string, HashSet<string>> Read = new(StringComparer.Ordinal);

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
                        texts.UnionWith(Inside(text));
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

    // A test reads its file hundreds of times, and most cells of it stay as they are.
    private static HashSet<string> Inside(string text)
    {
        if (text is not ['{' or '[', ..])
        {
            return [text];
        }

        if (Read.TryGetValue(text, out HashSet<string>? known))
        {
            return known;
        }

        HashSet<string> texts = new(StringComparer.Ordinal) { text };
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            Add(texts, document.RootElement);
        }
        catch (JsonException)
        {
            // A text that only begins like JSON.
        }

        return Read[text] = texts;
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
