using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>One lesion: a name on a path. A lesion is a stretch of one part, so the same name on two paths is two lesions.</summary>
internal readonly record struct LesionKey(string? Name, LinkPath Path)
{
    /// <summary>What is known of the area of all lesions at a place; a recorded share of a known ligament area counts as an area.</summary>
    public static LesionArea AreaOfAll(Place place) =>
        place.LesionArea.Kind == LesionAreaKind.Unknown && place.LesionPercent is { } share && place.LigamentArea is { } ligament
            ? LesionArea.Measured(share.Value / 100 * ligament)
            : place.LesionArea;

    /// <summary>Whether this lesion shows at a place: an area or share above 0, diffuse, or the worst level of its triplet.</summary>
    public bool ShowsAt(Place place)
    {
        LesionArea area = AreaAt(place);
        string? name = Name;
        return area.Kind == LesionAreaKind.Diffuse
            || area.MeasuredArea?.Value > 0
            || place.Readings.Any(reading =>
                string.Equals(reading.Lesion, name, StringComparison.Ordinal)
                && (reading.LesionPercent?.Value > 0 || (area.Kind == LesionAreaKind.Unknown && reading.Role == ReadingRole.Worst))
            );
    }

    /// <summary>This lesion's share of the ligament at a place: of the areas where both are known, else as recorded; null when neither is known.</summary>
    public Percent? ShareAt(Place place)
    {
        SquareCentimetres? area = AreaAt(place).MeasuredArea;
        if (area is { } measured && place.LigamentArea is { Value: > 0 } ligament)
        {
            return Percent.Of(measured, ligament);
        }

        string? name = Name;
        double[] shares =
        [
            .. place
                .Readings.Where(reading => string.Equals(reading.Lesion, name, StringComparison.Ordinal))
                .Select(reading => reading.LesionPercent?.Value)
                .OfType<double>(),
        ];
        return shares.Length > 0 ? new Percent(shares.Average())
            : area is { Value: 0 } ? new Percent(0)
            : null;
    }

    /// <summary>
    /// What is known of this lesion's area at a place. Where the place was looked at and does not name the lesion, it is not there.
    /// </summary>
    public LesionArea AreaAt(Place place)
    {
        string? name = Name;
        Reading[] own =
        [
            .. place.Readings.Where(reading =>
                reading.Plane == ImagePlane.ShortAxis && string.Equals(reading.Lesion, name, StringComparison.Ordinal)
            ),
        ];
        if (own.Length == 0)
        {
            bool looked = place.LesionArea.Kind != LesionAreaKind.Unknown || place.LesionPercent is not null;
            return looked ? LesionArea.None : LesionArea.Unknown;
        }

        if (own.Any(reading => reading.LesionArea.Kind == LesionAreaKind.Diffuse))
        {
            return LesionArea.Diffuse;
        }

        double[] areas = [.. own.Select(reading => reading.LesionArea.MeasuredArea?.Value).OfType<double>()];
        if (areas.Length > 0)
        {
            return LesionArea.Measured(new SquareCentimetres(areas.Average()));
        }

        double[] shares = [.. own.Select(reading => reading.LesionPercent?.Value).OfType<double>()];
        if (shares.Length > 0 && shares.All(share => share == 0))
        {
            return LesionArea.None;
        }

        if (shares.Length > 0 && place.LigamentArea is { } ligament)
        {
            return LesionArea.Measured(shares.Average() / 100 * ligament);
        }

        return own.Any(reading => reading.Role is ReadingRole.NormalAbove or ReadingRole.NormalBelow)
            ? LesionArea.None
            : LesionArea.Unknown;
    }
}
