using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>Gathers the readings of an examination into places.</summary>
public static class Places
{
    /// <summary>
    /// The places of an examination, ordered by path and level. The order of the readings does not matter; every reading belongs to
    /// exactly one place.
    /// </summary>
    public static IReadOnlyList<Place> Of(Examination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return
        [
            .. examination
                .Readings.GroupBy(reading => new PlaceKey(examination.Id, AnatomyRules.PathOf(reading.Part), reading.Level))
                .OrderBy(group => group.Key.Path)
                .ThenBy(group => group.Key.Level)
                .Select(group => Gather(group.Key, group)),
        ];
    }

    private static Place Gather(PlaceKey key, IEnumerable<Reading> unordered)
    {
        Reading[] readings =
        [
            .. unordered
                .OrderBy(reading => reading.Lesion, StringComparer.Ordinal)
                .ThenBy(reading => reading.Plane)
                .ThenBy(reading => reading.Part)
                .ThenBy(reading => reading.Measurer, StringComparer.Ordinal)
                .ThenBy(reading => reading.Repeat, StringComparer.Ordinal)
                .ThenBy(reading => reading.Id, StringComparer.Ordinal),
        ];
        Reading[] across = [.. readings.Where(reading => reading.Plane == ImagePlane.ShortAxis)];
        double? ligament = Mean(across.Select(reading => reading.LigamentArea?.Value));
        LesionArea lesion = SumOfLesions(across);
        double? recordedPercent = SumOfRecordedPercent(readings);
        return new Place
        {
            Key = key,
            Part = readings.Min(reading => reading.Part),
            Readings = readings,
            LigamentArea = ligament is { } area ? new SquareCentimetres(area) : null,
            LesionArea = lesion,
            LesionPercent =
                lesion.MeasuredArea is { } measured && ligament > 0 ? Percent.Of(measured, new SquareCentimetres(ligament.Value))
                : recordedPercent is { } percent ? new Percent(percent)
                : null,
            Thickness = Length(across.Select(reading => reading.Thickness), readings.Select(reading => reading.Thickness)),
            Width = Length(across.Select(reading => reading.Width), readings.Select(reading => reading.Width)),
            OtherLimbLigamentArea = Mean(across.Select(reading => reading.OtherLimbLigamentArea?.Value)) is { } otherArea
                ? new SquareCentimetres(otherArea)
                : null,
            OtherLimbThickness = Length(
                across.Select(reading => reading.OtherLimbThickness),
                readings.Select(reading => reading.OtherLimbThickness)
            ),
            Echogenicity = Worst(readings.Select(reading => reading.Echogenicity)),
            FibreAlignment = Worst(readings.Select(reading => reading.FibreAlignment)),
            Tracings = Math.Max(
                1,
                across
                    .GroupBy(reading => reading.Lesion, StringComparer.Ordinal)
                    .Select(group =>
                        group.Count(reading => reading.LigamentArea is not null || reading.LesionArea.MeasuredArea is not null)
                    )
                    .DefaultIfEmpty(1)
                    .Max()
            ),
        };
    }

    private static LesionArea SumOfLesions(IReadOnlyList<Reading> readings)
    {
        double sum = 0;
        bool unknown = readings.Count == 0;
        // A row without lesion name and area beside named lesions only carries the ligament: it hides no lesion.
        bool anyNamed = readings.Any(reading => reading.Lesion is not null);
        foreach (
            IGrouping<string?, Reading> lesion in readings
                .Where(reading => reading.Lesion is not null || !anyNamed || reading.LesionArea.Kind != LesionAreaKind.Unknown)
                .GroupBy(reading => reading.Lesion, StringComparer.Ordinal)
        )
        {
            if (lesion.Any(reading => reading.LesionArea.Kind == LesionAreaKind.Diffuse))
            {
                return LesionArea.Diffuse;
            }

            double? mean = Mean(lesion.Select(reading => reading.LesionArea.MeasuredArea?.Value));
            if (mean is null && lesion.Any(reading => reading.Role is ReadingRole.NormalAbove or ReadingRole.NormalBelow))
            {
                mean = 0;
            }

            unknown |= mean is null;
            sum += mean ?? 0;
        }

        return unknown ? LesionArea.Unknown : LesionArea.Measured(new SquareCentimetres(sum));
    }

    private static double? SumOfRecordedPercent(IEnumerable<Reading> readings)
    {
        double? sum = null;
        foreach (IGrouping<string?, Reading> lesion in readings.GroupBy(reading => reading.Lesion, StringComparer.Ordinal))
        {
            if (Mean(lesion.Select(reading => reading.LesionPercent?.Value)) is { } mean)
            {
                sum = (sum ?? 0) + mean;
            }
        }

        return sum;
    }

    private static Centimetres? Length(IEnumerable<Centimetres?> across, IEnumerable<Centimetres?> any) =>
        (Mean(across.Select(length => length?.Value)) ?? Mean(any.Select(length => length?.Value))) is { } mean
            ? new Centimetres(mean)
            : null;

    private static Grade? Worst(IEnumerable<Grade?> grades) => grades.OfType<Grade>().MaxBy(grade => grade.Value);

    private static double? Mean(IEnumerable<double?> values)
    {
        double[] known = [.. values.OfType<double>()];
        return known.Length == 0 ? null : known.Average();
    }
}
