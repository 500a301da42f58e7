using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>
/// A fingerprint of all that an analysis rests on, stored beside its figures: when it is the same, the figures are. The order of
/// examinations and readings does not matter, that of contradicting constraints does; notes, examiner and transducer do not enter, because the analysis reads none.
/// </summary>
public static class InputHash
{
    /// <summary>SHA-256 of engine version, settings, case, constraints and date, as 64 lower-case hexadecimal digits.</summary>
    /// <param name="course">The case; examinations after <paramref name="asOf"/> do not enter.</param>
    /// <param name="constraints">Links that persons pinned or broke, in the order they were said: the linker follows the earlier of two that contradict.</param>
    /// <param name="settings">Error model, linker and thresholds.</param>
    /// <param name="asOf">The date the analysis speaks for.</param>
    public static string Of(CaseCourse course, IReadOnlyList<LinkConstraint> constraints, AnalysisSettings settings, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(constraints);
        ArgumentNullException.ThrowIfNull(settings);
        StringBuilder text = new();
        Line(text, "engine", CaseAnalyser.EngineVersion, asOf, JsonSerializer.Serialize(settings));
        Case(text, course);
        foreach (PlanPhaseStart phase in course.PlanPhases.Where(one => one.From <= asOf).OrderBy(one => one.From).ThenBy(one => one.Phase))
        {
            Line(text, "phase", phase.From, phase.Phase);
        }

        foreach (
            Examination examination in course
                .Examinations.Where(examination => examination.Date <= asOf)
                .OrderBy(examination => examination.Date)
                .ThenBy(examination => examination.Id, StringComparer.Ordinal)
        )
        {
            Examined(text, examination);
        }

        foreach (LinkConstraint constraint in constraints)
        {
            Line(text, "constraint", constraint.Kind, Text(constraint.First), Text(constraint.Second));
        }

        return Hashed(text);
    }

    /// <summary>SHA-256 of what an analysis reads of the case beside its examinations: limb, structure, landmark, dates, target, the other limb, distances and the zone length.</summary>
    /// <param name="course">The case; its examinations do not enter.</param>
    public static string OfCase(CaseCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        StringBuilder text = new();
        Case(text, course);
        return Hashed(text);
    }

    /// <summary>SHA-256 of what an analysis reads of one examination. The order of its readings does not matter.</summary>
    /// <param name="examination">The examination.</param>
    public static string OfExamination(Examination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        StringBuilder text = new();
        Examined(text, examination);
        return Hashed(text);
    }

    private static void Case(StringBuilder text, CaseCourse course)
    {
        Line(
            text,
            "case",
            course.Id,
            course.Limb,
            course.Structure,
            course.Landmark,
            course.Onset,
            course.Reinjury,
            course.TargetFraction,
            course.OtherLimb
        );
        foreach (LandmarkDistance distance in course.LandmarkDistances.OrderBy(one => one.Proximal).ThenBy(one => one.Distal))
        {
            Line(text, "distance", distance.Proximal, distance.Distal, distance.Distance.Value);
        }

        if (course.ZoneLength is { } zoneLength)
        {
            Line(text, "zone-length", zoneLength.Value);
        }
    }

    private static void Examined(StringBuilder text, Examination examination)
    {
        Line(text, "examination", examination.Id, examination.Date, examination.Stance, examination.State, examination.Landmark);
        if (examination.Zones is { } zones)
        {
            Line(text, "zones", ZoneSchemes.CodeOf(zones));
        }

        foreach (FixedPoint point in examination.FixedPoints.OrderBy(one => one.Kind))
        {
            Line(text, "fixed-point", point.Kind, point.Level.Value);
        }

        foreach (Reading reading in examination.Readings.OrderBy(reading => reading.Id, StringComparer.Ordinal))
        {
            Line(
                text,
                "reading",
                reading.Id,
                reading.Part,
                reading.Level.Position.Value,
                reading.Plane,
                reading.Lesion,
                reading.Role,
                reading.LigamentArea?.Value,
                reading.LesionArea.Kind,
                reading.LesionArea.Area.Value,
                reading.LesionPercent?.Value,
                reading.Thickness?.Value,
                reading.Width?.Value,
                reading.OtherLimbLigamentArea?.Value,
                reading.OtherLimbThickness?.Value,
                Text(reading.Echogenicity),
                Text(reading.FibreAlignment),
                reading.Measurer,
                reading.Repeat
            );
        }
    }

    private static string Hashed(StringBuilder text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));

    // Every field is quoted as JSON, so that no text can pass for two fields.
    private static void Line(StringBuilder text, string kind, params IEnumerable<object?> fields)
    {
        text.Append(kind);
        foreach (object? field in fields)
        {
            text.Append(' ').Append(JsonSerializer.Serialize(Convert.ToString(field, CultureInfo.InvariantCulture)));
        }

        text.Append('\n');
    }

    private static string? Text(Grade? grade) =>
        grade is null ? null : string.Create(CultureInfo.InvariantCulture, $"{grade.Scale.Id}:{grade.Value}");

    private static string Text(PlaceKey place) =>
        string.Create(CultureInfo.InvariantCulture, $"{place.ExaminationId}|{place.Path}|{place.Level.Position.Value:R}");
}
