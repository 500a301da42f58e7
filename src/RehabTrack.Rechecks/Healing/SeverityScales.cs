using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>The classes of severity of <c>shared/severity.json</c>, each scale with its own denominator.</summary>
public static class SeverityScales
{
    /// <summary>The scale of the total percent over all levels of the structure.</summary>
    public const string TotalPercent = "total-percent";

    /// <summary>The scale of one section of a branch.</summary>
    public const string BranchSection = "branch-section";

    // Percents are quotients of sums; a limit of 15 must not be missed by the last binary digit.
    private const double Rounding = 1e-9;

    private static readonly ILookup<string, (int Class, double UpTo, bool LimitBelongsBelow)> Limits = Read();

    /// <summary>The class of a share on a scale.</summary>
    /// <param name="scaleId">The scale: <see cref="TotalPercent"/> or <see cref="BranchSection"/>.</param>
    /// <param name="share">The share, 0 to 100 %; anything above the last limit is of the last class.</param>
    /// <exception cref="ArgumentException">There is no such scale.</exception>
    public static SeverityGrade Of(string scaleId, Percent share)
    {
        if (!Limits.Contains(scaleId))
        {
            throw new ArgumentException($"There is no severity scale {scaleId}.", nameof(scaleId));
        }

        foreach ((int grade, double upTo, bool below) in Limits[scaleId])
        {
            if (below ? share.Value <= upTo + Rounding : share.Value < upTo - Rounding)
            {
                return new SeverityGrade(scaleId, grade);
            }
        }

        return new SeverityGrade(scaleId, Limits[scaleId].Max(limit => limit.Class));
    }

    private static ILookup<string, (int Class, double UpTo, bool LimitBelongsBelow)> Read()
    {
        using JsonDocument document = ReferenceTable.Parse("severity");
        return document
            .RootElement.GetProperty("rows")
            .EnumerateArray()
            .Select(row =>
                (
                    Scale: row.GetProperty("name").GetString()!,
                    Limit: (
                        row.GetProperty("class").GetInt32(),
                        row.GetProperty("upTo").GetDouble(),
                        row.GetProperty("limitBelongs").GetString() == "below"
                    )
                )
            )
            .OrderBy(row => row.Limit.Item2)
            .ToLookup(row => row.Scale, row => row.Limit);
    }
}
