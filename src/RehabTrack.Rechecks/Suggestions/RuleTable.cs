using System.Text.Json;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>The rules of <c>shared/rules.json</c>.</summary>
public static class RuleTable
{
    private static readonly IReadOnlyDictionary<RuleCode, Rule> ByCode = Read();

    /// <summary>All rules, in the order of the table.</summary>
    public static IEnumerable<Rule> All => ByCode.Values;

    /// <summary>The row of a rule.</summary>
    public static Rule Of(RuleCode code) => ByCode[code];

    private static Dictionary<RuleCode, Rule> Read()
    {
        using JsonDocument document = ReferenceTable.Parse("rules");
        Dictionary<RuleCode, Rule> rules = [];
        foreach (JsonElement row in document.RootElement.GetProperty("rows").EnumerateArray())
        {
            string id = row.GetProperty("name").GetString()!;
            Rule rule = new(
                Member<RuleCode>(id),
                id,
                Member<SuggestedMove>(row.GetProperty("suggest").GetString()!),
                Member<FindingSeverity>(row.GetProperty("severity").GetString()!),
                row.GetProperty("source").GetString()!
            );
            rules.Add(rule.Code, rule);
        }

        return rules;
    }

    private static T Member<T>(string code)
        where T : struct, Enum => Enum.Parse<T>(code.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);
}
