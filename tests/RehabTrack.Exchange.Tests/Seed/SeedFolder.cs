using System.Globalization;
using System.Text.Json;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Tests.Seed;

/// <summary>The files of the demo, read as a user's.</summary>
internal static class SeedFolder
{
    public static JsonElement Practice { get; } = ReadPractice();

    public static DateOnly Anchor { get; } = DateOnly.Parse(Practice.GetProperty("anchorDate").GetString()!, CultureInfo.InvariantCulture);

    public static IReadOnlyList<string> Files { get; } = [.. Texts("imports")];

    public static IEnumerable<CaseFile> Cases() => Files.SelectMany(file => Read(file).Cases);

    public static CaseFile Case(string label) => Cases().Single(file => file.Label == label);

    public static SheetResult Read(string file)
    {
        using FileStream stream = File.OpenRead(RepositoryFolder.Of("seed", file));
        return SheetImport.Read(stream, Anchor);
    }

    public static IEnumerable<string> Texts(string list) => Practice.GetProperty(list).EnumerateArray().Select(item => item.GetString()!);

    public static IEnumerable<string> Texts(string list, string name) =>
        Practice.GetProperty(list).EnumerateArray().Select(item => item.GetProperty(name).GetString()!);

    private static JsonElement ReadPractice()
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(RepositoryFolder.Of("seed", "practice.json")));
        return document.RootElement.Clone();
    }
}
