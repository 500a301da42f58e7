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
        Reading[] readings = [.. examination.Readings];
        Array.Sort(readings, InOrder);
        List<Place> places = new(readings.Length);
        int end;
        for (int start = 0; start < readings.Length; start = end)
        {
            Reading first = readings[start];
            end = start + 1;
            while (end < readings.Length && ByPlace(first, readings[end]) == 0)
            {
                end++;
            }

            places.Add(Gather(new PlaceKey(examination.Id, AnatomyRules.PathOf(first.Part), first.Level), readings[start..end]));
        }

        return places;
    }

    // Within a place by lesion first, so that the readings of one lesion stand together, those without a name before all others.
    private static int InOrder(Reading one, Reading other) =>
        ByPlace(one, other) is not 0 and var place ? place
        : string.CompareOrdinal(one.Lesion, other.Lesion) is not 0 and var lesion ? lesion
        : one.Plane != other.Plane ? (int)one.Plane - (int)other.Plane
        : one.Part != other.Part ? (int)one.Part - (int)other.Part
        : string.CompareOrdinal(one.Measurer, other.Measurer) is not 0 and var measurer ? measurer
        : string.CompareOrdinal(one.Repeat, other.Repeat) is not 0 and var repeat ? repeat
        : string.CompareOrdinal(one.Id, other.Id);

    private static int ByPlace(Reading one, Reading other) =>
        (int)AnatomyRules.PathOf(one.Part) - (int)AnatomyRules.PathOf(other.Part) is not 0 and var path
            ? path
            : one.Level.CompareTo(other.Level);

    private static Place Gather(PlaceKey key, Reading[] readings)
    {
        bool isAcross(Reading reading) => reading.Plane == ImagePlane.ShortAxis;
        Reading[] across = Array.TrueForAll(readings, isAcross) ? readings : Array.FindAll(readings, isAcross);
        double? ligament = Mean(across, static reading => reading.LigamentArea?.Value);
        LesionArea lesion = SumOfLesions(across);
        double? recordedPercent = SumOfRecordedPercent(readings);
        return new Place
        {
            Key = key,
            Part = FirstPart(readings),
            Readings = readings,
            LigamentArea = Area(ligament),
            LesionArea = lesion,
            LesionPercent =
                lesion.MeasuredArea is { } measured && ligament > 0 ? Percent.Of(measured, new SquareCentimetres(ligament.Value))
                : recordedPercent is { } percent ? new Percent(percent)
                : null,
            Thickness = Length(across, readings, static reading => reading.Thickness?.Value),
            Width = Length(across, readings, static reading => reading.Width?.Value),
            OtherLimbLigamentArea = Area(Mean(across, static reading => reading.OtherLimbLigamentArea?.Value)),
            OtherLimbThickness = Length(across, readings, static reading => reading.OtherLimbThickness?.Value),
            Echogenicity = Worst(readings, static reading => reading.Echogenicity),
            FibreAlignment = Worst(readings, static reading => reading.FibreAlignment),
            Tracings = TracingsOf(across),
        };
    }

    private static Part FirstPart(ReadOnlySpan<Reading> readings)
    {
        Part first = readings[0].Part;
        foreach (Reading reading in readings)
        {
            first = reading.Part < first ? reading.Part : first;
        }

        return first;
    }

    private static int TracingsOf(ReadOnlySpan<Reading> across)
    {
        int most = 1;
        while (!across.IsEmpty)
        {
            int tracings = 0;
            foreach (Reading reading in TakeLesion(ref across))
            {
                tracings += reading.LigamentArea is not null || reading.LesionArea.MeasuredArea is not null ? 1 : 0;
            }

            most = Math.Max(most, tracings);
        }

        return most;
    }

    private static LesionArea SumOfLesions(ReadOnlySpan<Reading> across)
    {
        double sum = 0;
        bool unknown = across.IsEmpty;
        bool anyNamed = !across.IsEmpty && across[^1].Lesion is not null;
        while (!across.IsEmpty)
        {
            ReadOnlySpan<Reading> lesion = TakeLesion(ref across);
            bool normal = false;
            foreach (Reading reading in lesion)
            {
                if (reading.LesionArea.Kind == LesionAreaKind.Diffuse)
                {
                    return LesionArea.Diffuse;
                }

                normal |= reading.Role is ReadingRole.NormalAbove or ReadingRole.NormalBelow || reading.LesionPercent?.Value == 0;
            }

            double? mean = Mean(lesion, static reading => reading.LesionArea.MeasuredArea?.Value);
            // A row without lesion name and area beside named lesions only carries the ligament: it hides no lesion.
            if (mean is not null || !anyNamed || lesion[0].Lesion is not null)
            {
                unknown |= mean is null && !normal;
                sum += mean ?? 0;
            }
        }

        return unknown ? LesionArea.Unknown : LesionArea.Measured(new SquareCentimetres(sum));
    }

    private static double? SumOfRecordedPercent(ReadOnlySpan<Reading> readings)
    {
        double? sum = null;
        while (!readings.IsEmpty)
        {
            if (Mean(TakeLesion(ref readings), static reading => reading.LesionPercent?.Value) is { } mean)
            {
                sum = (sum ?? 0) + mean;
            }
        }

        return sum;
    }

    /// <summary>Takes the readings of the first lesion off.</summary>
    private static ReadOnlySpan<Reading> TakeLesion(ref ReadOnlySpan<Reading> readings)
    {
        int end = 1;
        while (end < readings.Length && string.Equals(readings[end].Lesion, readings[0].Lesion, StringComparison.Ordinal))
        {
            end++;
        }

        ReadOnlySpan<Reading> lesion = readings[..end];
        readings = readings[end..];
        return lesion;
    }

    private static SquareCentimetres? Area(double? area) => area is { } known ? new SquareCentimetres(known) : null;

    private static Centimetres? Length(ReadOnlySpan<Reading> across, ReadOnlySpan<Reading> any, Func<Reading, double?> lengthOf) =>
        (Mean(across, lengthOf) ?? Mean(any, lengthOf)) is { } mean ? new Centimetres(mean) : null;

    private static Grade? Worst(ReadOnlySpan<Reading> readings, Func<Reading, Grade?> gradeOf)
    {
        Grade? worst = null;
        foreach (Reading reading in readings)
        {
            worst = gradeOf(reading) is { } grade && !(grade.Value <= worst?.Value) ? grade : worst;
        }

        return worst;
    }

    private static double? Mean(ReadOnlySpan<Reading> readings, Func<Reading, double?> sizeOf)
    {
        double sum = 0;
        int known = 0;
        foreach (Reading reading in readings)
        {
            if (sizeOf(reading) is { } size)
            {
                sum += size;
                known++;
            }
        }

        return known == 0 ? null : sum / known;
    }
}
