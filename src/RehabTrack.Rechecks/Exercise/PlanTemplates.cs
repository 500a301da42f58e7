using System.Globalization;
using System.Text.Json;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Rechecks.Exercise;

/// <summary>The templates of <c>shared/plans</c>.</summary>
public static class PlanTemplates
{
    private const string Folder = "plans/";
    private const string Unfilled = "?";

    /// <summary>All templates, by title.</summary>
    public static IReadOnlyList<PlanTemplate> All { get; } = Read();

    /// <summary>The template of a name; null when there is none.</summary>
    /// <param name="name">The name, for example <c>sdft-severe</c>.</param>
    public static PlanTemplate? Find(string name) => All.FirstOrDefault(template => template.Name == name);

    private static PlanTemplate[] Read() =>
        [
            .. typeof(PlanTemplates)
                .Assembly.GetManifestResourceNames()
                .Where(resource => resource.StartsWith($"shared/{Folder}", StringComparison.Ordinal))
                .Select(resource => Path.GetFileNameWithoutExtension(resource))
                .Select(Read)
                .OrderBy(template => template.Title, StringComparer.Ordinal),
        ];

    private static PlanTemplate Read(string name)
    {
        using JsonDocument document = ReferenceTable.Parse(Folder + name);
        JsonElement root = document.RootElement;
        JsonElement[] rows = [.. root.GetProperty("rows").EnumerateArray()];
        return new PlanTemplate
        {
            Name = name,
            Version = root.GetProperty("version").GetInt32(),
            Title = Text(root, "title"),
            About = Text(root, "about"),
            Source = Text(root, "source"),
            Steps = [.. rows.Select(Step)],
            StepSources = [.. rows.Select(row => Text(row, "source"))],
            Caps = new PlanCaps(root.TryGetProperty("capOutingMinutes", out JsonElement cap) ? cap.GetInt32() : null),
        };
    }

    private static PlanStep Step(JsonElement row) =>
        new()
        {
            Name = Text(row, "name"),
            Walk = Gait(Text(row, "walk")),
            Trot = Gait(Text(row, "trot")),
            Canter = Gait(Text(row, "canter")),
            Gallop = Gait(Text(row, "gallop")),
            OutingsADay = Number(Text(row, "outings")),
            DaysAWeek = Number(Text(row, "days")),
            Modes = Set<WorkModes>(Text(row, "modes")),
            Circles = Text(row, "circles") switch
            {
                "straight lines" => Circles.None,
                "large circles" => Circles.Large,
                var other => throw new InvalidOperationException($"A template has no circles called {other}."),
            },
            Surfaces = Set<Surfaces>(Text(row, "surface")),
            Turnout = Text(row, "turnout") switch
            {
                "box" => Turnout.None,
                "small-paddock" => Turnout.SmallPaddock,
                var other => throw new InvalidOperationException($"A template has no turnout called {other}."),
            },
            ShortestDays = row.GetProperty("length").GetInt32(),
            Gate = Text(row, "gate") is { Length: > 0 } criteria ? new Gate(criteria, [.. Words(Text(row, "rules")).Select(Rule)]) : null,
        };

    /// <summary><c>?</c>, <c>20</c>, <c>10 +5 to 40</c> or <c>0 +2 to ?</c>.</summary>
    private static GaitRule? Gait(string text) =>
        text == Unfilled ? null
        : text.Split(' ') is [var start, var growth, "to", var ceiling] ? new GaitRule(Whole(start), Whole(growth[1..]), Number(ceiling))
        : new GaitRule(Whole(text));

    private static int? Number(string text) => text == Unfilled ? null : Whole(text);

    private static int Whole(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);

    private static T Set<T>(string text)
        where T : struct, Enum =>
        text is "" or Unfilled ? default : Enum.Parse<T>(text.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    private static RuleCode Rule(string id) => RuleTable.All.Single(rule => rule.Id == id).Code;

    private static string[] Words(string text) => text.Split(", ", StringSplitOptions.RemoveEmptyEntries);

    private static string Text(JsonElement row, string name) => row.GetProperty(name).GetString()!;
}
