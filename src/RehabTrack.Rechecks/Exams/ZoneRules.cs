using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>What an examination by zones, and the zone length of a case, must keep to.</summary>
public static class ZoneRules
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");

    /// <summary>What is wrong with how the levels of an examination are told: a scheme of the other kind of limb, fixed points in cm.</summary>
    /// <param name="scheme">The scheme; null when levels are read off a tape, which is never wrong.</param>
    /// <param name="limb">The limb of the case.</param>
    /// <param name="points">The fixed points given: they are distances on a tape.</param>
    public static IReadOnlyList<Problem> Check(ZoneScheme? scheme, Limb limb, IReadOnlyList<FixedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (scheme is not { } zones)
        {
            return [];
        }

        List<Problem> problems = [];
        if (!ZoneSchemes.Fits(zones, limb))
        {
            problems.Add(
                new Problem(
                    ReadingFields.ZoneScheme,
                    "zone-scheme-other-limb",
                    ZoneSchemes.CodeOf(zones),
                    AnatomyCodes.Limbs.CodeOf(limb),
                    string.Join(", ", ZoneSchemes.Of(limb).Select(ZoneSchemes.CodeOf))
                )
            );
        }

        problems.AddRange(
            points.Select(point => new Problem(
                FixedPointRules.FieldOf(point.Kind),
                "fixed-point-by-zones",
                point.Level.Value.ToString(CultureInfo.InvariantCulture)
            ))
        );
        return problems;
    }

    /// <summary>What is wrong with the zone length of a case.</summary>
    /// <param name="lengthCm">cm; null when not measured.</param>
    public static IReadOnlyList<Problem> CheckLength(double? lengthCm)
    {
        double shortest = Limits["shortestZoneLengthCm"];
        double longest = Limits["longestZoneLengthCm"];
        return lengthCm is not { } length || (length >= shortest && length <= longest)
            ? []
            :
            [
                new Problem(
                    ReadingFields.ZoneLength,
                    "zone-length-out-of-range",
                    length.ToString(CultureInfo.InvariantCulture),
                    shortest.ToString(CultureInfo.InvariantCulture),
                    longest.ToString(CultureInfo.InvariantCulture)
                ),
            ];
    }
}
