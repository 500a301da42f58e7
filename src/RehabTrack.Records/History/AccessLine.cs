using System.Text.Json;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.History;

/// <summary>A line of the trail that tells no change, but who came in or was not let in.</summary>
internal static class AccessLine
{
    /// <summary>The kind of such a line.</summary>
    public const string Kind = "Access";

    /// <summary>The field that tells what it was.</summary>
    public const string EventField = "event";

    private const string DetailField = "detail";
    private const int LongestDetail = 200;

    /// <summary>The line, by whoever writes now; not yet chained.</summary>
    public static ChangeRecord Of(RecordsContext records, AccessEvent what, Guid? recordId, string? detail)
    {
        Dictionary<string, object?> said = new() { [EventField] = what };
        if (Clean(detail) is { } text)
        {
            said.Add(DetailField, text);
        }

        return HistoryInterceptor.Line(records, Kind, recordId ?? Guid.Empty, null, null, said);
    }

    /// <summary>What a line of the kind tells of; null for an event of another version, and once it was erased.</summary>
    public static AccessEvent? EventOf(string afterJson)
    {
        if (afterJson.Length == 0)
        {
            return null;
        }

        using JsonDocument said = JsonDocument.Parse(afterJson);
        return
            said.RootElement.TryGetProperty(EventField, out JsonElement name)
            && Enum.TryParse(name.GetString(), out AccessEvent what)
            && Enum.IsDefined(what)
            ? what
            : null;
    }

    private static string? Clean(string? detail)
    {
        string text = string.Concat((detail ?? "").Where(letter => !char.IsControl(letter))).Trim();
        return text.Length == 0 ? null : text[..Math.Min(text.Length, LongestDetail)];
    }
}
