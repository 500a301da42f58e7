using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>Courses written as tables, linked by hand: the level's number is its place.</summary>
internal static class CourseBuilder
{
    public static readonly DateOnly Start = new(2026, 1, 12);

    public static SquareCentimetres Cm2(double area) => new(area);

    public static Reading Row(
        double level,
        double? ligament = null,
        double? lesion = null,
        Part part = Part.Body,
        string? measurer = "Ada",
        string? name = null
    ) =>
        new()
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"{part}-{level}-{name}"),
            Part = part,
            Level = new Centimetres(level),
            LigamentArea = ligament is { } l ? Cm2(l) : null,
            LesionArea = lesion is { } x ? LesionArea.Measured(Cm2(x)) : LesionArea.Unknown,
            Measurer = measurer,
            Lesion = name,
        };

    /// <summary>An examination so many days after the start.</summary>
    public static Examination Exam(int day, params IEnumerable<Reading> readings)
    {
        DateOnly date = Start.AddDays(day);
        string id = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return new Examination
        {
            Id = id,
            Date = date,
            Readings = [.. readings.Select(reading => reading with { Id = $"{id}/{reading.Id}" })],
        };
    }

    public static CaseCourse Case(params IEnumerable<Examination> examinations) =>
        new()
        {
            Id = "case",
            Limb = Limb.LeftFore,
            Structure = Structure.SuspensoryLigament,
            Landmark = Landmark.AccessoryCarpalBone,
            Onset = Start.AddDays(-60),
            Examinations = [.. examinations],
        };

    /// <summary>Links by hand: places of one path and one tape reading are the same place.</summary>
    public static LinkedCourse ByLevel(CaseCourse course, Func<PlaceKey, double?>? uncertain = null) =>
        TrueLinks.Of(course, place => place.Level, level => level.Position, uncertain);

    public static CaseAnalysis Analysed(CaseCourse course, AnalysisSettings? settings = null, Func<PlaceKey, double?>? uncertain = null) =>
        CaseAnalyser.AnalyseLinked(
            course,
            ByLevel(course, uncertain),
            settings ?? new AnalysisSettings(),
            course.Examinations.Select(examination => examination.Date).DefaultIfEmpty(Start).Max()
        );

    /// <summary>The six levels of trade practice, 4 cm apart: ligament 1.20 1.30 1.50 1.40 1.30 1.20, lesion 0 .10 .45 .30 .05 0 cm².</summary>
    public static IEnumerable<Reading> SixLevels(double shrink = 1, int? without = null)
    {
        double[] ligament = [1.20, 1.30, 1.50, 1.40, 1.30, 1.20];
        double[] lesion = [0, 0.10, 0.45, 0.30, 0.05, 0];
        for (int i = 0; i < 6; i++)
        {
            if (i + 1 != without)
            {
                yield return Row(10 + (4 * i), ligament[i], shrink * lesion[i]);
            }
        }
    }
}
