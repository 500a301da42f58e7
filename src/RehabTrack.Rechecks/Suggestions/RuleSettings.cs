using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>What a practice may change about the rules; defaults and sources stand in <c>shared/rule-limits.json</c>.</summary>
public sealed record RuleSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("rule-limits");

    /// <summary>By the row's name: the lowest and the highest number that a practice may set, both included.</summary>
    public static IReadOnlyDictionary<string, (int Lowest, int Highest)> Ranges { get; } = ReadRanges();

    /// <summary>Ids of the rules that the practice switched off, separated by commas, in the order of the table; empty when all are on.</summary>
    public string SwitchedOff { get; init; } = "";

    /// <summary>Days from the latest of onset, re-injury and plan start before trot is suggested, at least 0.</summary>
    public int TrotAfterDays { get; init; } = (int)Table["trotAfterDays"];

    /// <summary>The highest grade of echogenicity and of fibre alignment at the worst level for canter or gallop, 0 to 3.</summary>
    public int CanterHighestGrade { get; init; } = (int)Table["canterHighestGrade"];

    /// <summary>For so many days after shock wave "sound" is no evidence, at least 0.</summary>
    public int ShockWaveDays { get; init; } = (int)Table["shockWaveDays"];

    /// <summary>Whether a rule is on.</summary>
    public bool IsOn(Rule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return !Ids.Contains(rule.Id, StringComparer.Ordinal);
    }

    /// <summary>The same settings with these rules switched off and all others on.</summary>
    /// <param name="off">The rules; their order does not matter.</param>
    public RuleSettings WithOff(IEnumerable<RuleCode> off)
    {
        HashSet<RuleCode> codes = [.. off];
        return this with { SwitchedOff = string.Join(',', RuleTable.All.Where(rule => codes.Contains(rule.Code)).Select(rule => rule.Id)) };
    }

    private static Dictionary<string, (int Lowest, int Highest)> ReadRanges()
    {
        using JsonDocument document = ReferenceTable.Parse("rule-limits");
        return document
            .RootElement.GetProperty("rows")
            .EnumerateArray()
            .ToDictionary(
                row => row.GetProperty("name").GetString()!,
                row => (row.GetProperty("lowest").GetInt32(), row.GetProperty("highest").GetInt32()),
                StringComparer.Ordinal
            );
    }

    private string[] Ids => SwitchedOff.Split(',', StringSplitOptions.RemoveEmptyEntries);
}
