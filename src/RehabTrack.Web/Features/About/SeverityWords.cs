using System.Text.Json;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.About;

/// <summary>The classes of size in one sentence, with the borders and sources as they stand in the severity table.</summary>
public static class SeverityWords
{
    /// <summary>The sentence.</summary>
    public static string Read()
    {
        using JsonDocument document = ReferenceTable.Parse("severity");
        JsonElement[] rows = [.. document.RootElement.GetProperty("rows").EnumerateArray()];
        JsonElement[] total = [.. rows.Where(row => row.GetProperty("name").GetString() == "total-percent")];
        JsonElement[] section = [.. rows.Where(row => row.GetProperty("name").GetString() == "branch-section")];
        return string.Format(
            TextCulture.Default,
            AboutPage.SeverityText,
            Border(total[0]),
            Border(total[1]),
            Border(section[0]),
            Border(section[1]),
            Source(total[0]),
            Source(section[0])
        );
    }

    private static string Border(JsonElement row) => Figures.Percent(new Percent(row.GetProperty("upTo").GetDouble()));

    private static string Source(JsonElement row) => row.GetProperty("source").GetString()!;
}
