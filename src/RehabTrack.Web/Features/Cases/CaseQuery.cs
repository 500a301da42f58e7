using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Features.Cases;

/// <summary>What of a case is looked at: all of it stands in the address, so that Back works and every view can be sent.</summary>
public sealed record CaseQuery
{
    /// <summary>The date the page speaks for; later examinations are left out. Null is today.</summary>
    public DateOnly? AsOf { get; init; }

    /// <summary>The examination of the chosen rung, by date.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The examination's name, where two fall on one date.</summary>
    public string? Examination { get; init; }

    /// <summary>The level of the chosen rung on that day's tape; null when it is a zone.</summary>
    public Centimetres? Level { get; init; }

    /// <summary>The zone of the chosen rung, by its name; null on a tape.</summary>
    public string? Zone { get; init; }

    /// <summary>The path of the chosen rung; null when the level alone is enough.</summary>
    public LinkPath? Path { get; init; }

    /// <summary>The other date the chosen place is compared with.</summary>
    public DateOnly? Compare { get; init; }

    /// <summary>Whether the chosen place shows who changed it.</summary>
    public bool Who { get; init; }

    /// <summary>Whether the ladder shows places with the shift of the tape taken out.</summary>
    public bool Straight { get; init; }

    /// <summary>Whether the ground of the verdict is open.</summary>
    public bool Why { get; init; }

    /// <summary>Whether the history of changes is open.</summary>
    public bool Changes { get; init; }

    /// <summary>The signature whose figures are open.</summary>
    public Guid? Seen { get; init; }

    /// <summary>The step asked of the rules, and what the visit found.</summary>
    public VisitQuery Visit { get; init; } = new();

    /// <summary>Reads an address's query; what cannot be read is left out.</summary>
    /// <param name="find">Yields the text of a parameter, or null.</param>
    public static CaseQuery Parse(Func<string, string?> find)
    {
        ArgumentNullException.ThrowIfNull(find);
        return new CaseQuery
        {
            AsOf = DayText.Read(find("asof")),
            Date = DayText.Read(find("date")),
            Examination = find("examination") is { Length: > 0 } name ? name : null,
            Level = DecimalText.TryRead(find("level") ?? string.Empty, out double level, out _) ? new Centimetres(level) : null,
            Zone = find("zone") is { Length: > 0 } zone ? zone : null,
            Path =
                Enum.TryParse(find("path")?.Replace("-", string.Empty, StringComparison.Ordinal), true, out LinkPath path)
                && Enum.IsDefined(path)
                    ? path
                    : null,
            Compare = DayText.Read(find("compare")),
            Who = find("who") == "1",
            Straight = find("view") == "straight",
            Why = find("why") == "1",
            Changes = find("changes") == "1",
            Seen = Guid.TryParse(find("seen"), out Guid seen) ? seen : null,
            Visit = VisitQuery.Parse(find("visit")),
        };
    }

    /// <summary>The address of this view of a case.</summary>
    public string AddressOf(Guid caseId)
    {
        (string Name, string? Value)[] parameters =
        [
            ("asof", DayText.Of(AsOf)),
            ("date", DayText.Of(Date)),
            ("examination", Examination),
            ("level", Level?.Value.ToString("0.###", CultureInfo.InvariantCulture)),
            ("zone", Zone),
            ("path", Path is { } path ? Code(path) : null),
            ("compare", DayText.Of(Compare)),
            ("who", Who ? "1" : null),
            ("view", Straight ? "straight" : null),
            ("why", Why ? "1" : null),
            ("changes", Changes ? "1" : null),
            ("seen", Seen?.ToString()),
            ("visit", Visit.Text),
        ];
        string query = string.Join(
            '&',
            parameters.Where(one => !string.IsNullOrEmpty(one.Value)).Select(one => $"{one.Name}={Uri.EscapeDataString(one.Value!)}")
        );
        return query.Length == 0 ? $"/cases/{caseId}" : $"/cases/{caseId}?{query}";
    }

    /// <summary>The same view without a chosen rung.</summary>
    public CaseQuery WithoutRung() =>
        this with
        {
            Date = null,
            Examination = null,
            Level = null,
            Zone = null,
            Path = null,
            Compare = null,
            Who = false,
        };

    private static string Code(LinkPath path) =>
        path switch
        {
            LinkPath.Axial => "axial",
            LinkPath.MedialBranch => "medial-branch",
            LinkPath.LateralBranch => "lateral-branch",
            LinkPath.Whole => "whole",
        };
}
