using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.People;

/// <summary>By what a person can be known: names, telephone numbers and addresses, those of today and those that the trail still tells of.</summary>
internal sealed class PersonMarks
{
    private static readonly string[] Fields = ["name", "phone", "mail"];

    private PersonMarks(IEnumerable<string> marks)
    {
        // The longest first, so that none is broken up by a shorter one that is part of it.
        All = [.. marks.OrderByDescending(mark => mark.Length)];
    }

    /// <summary>Each once, the longest first.</summary>
    public IReadOnlyList<string> All { get; }

    /// <summary>The marks of a person, read before anything of them is erased.</summary>
    /// <param name="records">The database, entered for the practice.</param>
    /// <param name="person">The person.</param>
    /// <param name="without">Words that are none: what stays, and what stands instead.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<PersonMarks> OfAsync(
        RecordsContext records,
        PersonRecord person,
        IEnumerable<string?> without,
        CancellationToken cancellation
    )
    {
        HashSet<string> marks = new(StringComparer.Ordinal);
        Take(marks, person.Name, person.Phone, person.Mail);
        var told = await records
            .Changes.Where(line => line.RecordId == person.Id && line.Kind == PersonKind && line.AfterJson != "")
            .Select(line => new { line.BeforeJson, line.AfterJson })
            .ToArrayAsync(cancellation);
        foreach (string json in told.SelectMany(line => new[] { line.BeforeJson, line.AfterJson }).OfType<string>())
        {
            using JsonDocument words = JsonDocument.Parse(json);
            foreach (string field in Fields)
            {
                if (words.RootElement.TryGetProperty(field, out JsonElement word) && word.ValueKind == JsonValueKind.String)
                {
                    Take(marks, word.GetString());
                }
            }
        }

        Take(
            marks,
            await records.Reminders.Where(letter => letter.PersonId == person.Id).Select(letter => letter.Mail).ToArrayAsync(cancellation)
        );
        Take(
            marks,
            await records
                .Accounts.Where(account => account.PersonId == person.Id)
                .Select(account => account.SignInName)
                .ToArrayAsync(cancellation)
        );
        marks.ExceptWith(without.OfType<string>());
        return new PersonMarks(marks);
    }

    /// <summary>The mark as it stands inside JSON that records wrote.</summary>
    public static string InJson(string mark) => JsonSerializer.Serialize(mark, RecordJson.Options)[1..^1];

    /// <summary>Whether a text holds one of them as words of its own, in whatever case.</summary>
    public bool AreIn(string text) => All.Any(mark => Places(text, mark).Any());

    /// <summary>A text with something else in the place of each.</summary>
    public string Without(string text, string instead)
    {
        foreach (string mark in All)
        {
            foreach (int place in Places(text, mark).Reverse())
            {
                text = string.Concat(text.AsSpan(0, place), instead, text.AsSpan(place + mark.Length));
            }
        }

        return text;
    }

    /// <summary>JSON with something else in the place of each inside its texts; what is no JSON is taken as a text.</summary>
    public string WithoutInJson(string json, string instead)
    {
        try
        {
            JsonNode? changed = Without(JsonNode.Parse(json), instead);
            return changed is null ? json : changed.ToJsonString(RecordJson.Options);
        }
        catch (JsonException)
        {
            return Without(json, instead);
        }
    }

    private static string PersonKind => HistoryInterceptor.KindOf(typeof(PersonRecord));

    private static void Take(HashSet<string> marks, params string?[] words) =>
        marks.UnionWith(words.Where(word => !string.IsNullOrWhiteSpace(word))!);

    private static IEnumerable<int> Places(string text, string mark)
    {
        for (
            int place = text.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            place >= 0;
            place = text.IndexOf(mark, place + mark.Length, StringComparison.OrdinalIgnoreCase)
        )
        {
            int end = place + mark.Length;
            if (!(place > 0 && char.IsLetterOrDigit(text[place - 1])) && !(end < text.Length && char.IsLetterOrDigit(text[end])))
            {
                yield return place;
            }
        }
    }

    private JsonNode? Without(JsonNode? node, string instead) =>
        node switch
        {
            JsonObject fields => new JsonObject(
                fields.Select(field => KeyValuePair.Create(field.Key, Without(field.Value, instead))).ToArray()
            ),
            JsonArray items => new JsonArray([.. items.Select(item => Without(item, instead))]),
            JsonValue value when value.TryGetValue(out string? text) => JsonValue.Create(Without(text, instead)),
            _ => node?.DeepClone(),
        };
}
