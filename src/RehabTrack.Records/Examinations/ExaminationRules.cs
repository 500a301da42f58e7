using System.Globalization;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>What an examination must keep to before it counts. Rows are named by their place: <c>readings[3].lesion_area_cm2</c>.</summary>
internal static class ExaminationRules
{
    private const int MostReadings = 500;

    /// <summary>What even a draft cannot hold: numbers that are none, and sheets without end.</summary>
    public static List<Problem> Unstorable(ExaminationContent content)
    {
        List<Problem> problems = [.. Texts(content)];
        if (content.Readings.Count > MostReadings)
        {
            problems.Add(new("readings", "too-many-readings", RecordText.Of(content.Readings.Count), RecordText.Of(MostReadings)));
        }

        for (int index = 0; index < content.Readings.Count; index++)
        {
            foreach ((string field, object? value) in ReadingValues.Of(content.Readings[index].Values))
            {
                if (value is double number && !double.IsFinite(number))
                {
                    problems.Add(new(Path(index, field), "not-a-number"));
                }
            }
        }

        return problems;
    }

    /// <summary>All that keeps the examination from being signed; rows without measurement and note were not read, and do not count.</summary>
    public static List<Problem> Check(ExaminationContent content, Limb limb, DateOnly? birthDate, DateOnly today)
    {
        List<Problem> problems =
        [
            .. DateRules.CheckExamination(content.Date, birthDate, today).Select(problem => problem with { Field = "date" }),
        ];
        problems.AddRange(FixedPointRules.Check(content.FixedPoints));
        problems.AddRange(ZoneRules.Check(content.Zones, limb, content.FixedPoints));
        Dictionary<object, int> seen = [];
        for (int index = 0; index < content.Readings.Count; index++)
        {
            ReadingDraft reading = content.Readings[index].Values;
            if (!IsRead(reading))
            {
                continue;
            }

            foreach (Problem problem in ReadingRules.Check(reading))
            {
                problems.Add(problem with { Field = Path(index, problem.Field) });
            }

            if (reading.ZoneScheme != content.Zones)
            {
                problems.Add(
                    new(Path(index, PlaceField(reading)), "zone-scheme-differs", CodeOf(reading.ZoneScheme), CodeOf(content.Zones))
                );
            }

            object key = KeyOf(reading);
            if (!seen.TryAdd(key, index))
            {
                problems.Add(new(Path(index, PlaceField(reading)), "place-read-twice", RecordText.Of(seen[key] + 1)));
            }
        }

        problems.AddRange(LesionsBeyondLigament(content));
        if (seen.Count == 0)
        {
            problems.Add(new("readings", "no-readings"));
        }

        return problems;
    }

    /// <summary>What is worth a second look.</summary>
    public static List<Problem> Cautions(ExaminationContent content)
    {
        List<Problem> cautions = [];
        for (int index = 0; index < content.Readings.Count; index++)
        {
            foreach (Problem caution in ReadingRules.Cautions(content.Readings[index].Values))
            {
                cautions.Add(caution with { Field = Path(index, caution.Field) });
            }
        }

        return cautions;
    }

    /// <summary>Grades on another scale than the case has been graded on: kept, and not compared.</summary>
    public static async Task<List<Problem>> ScaleCautionsAsync(
        RecordsContext records,
        Guid caseId,
        Guid examinationId,
        ExaminationContent content,
        CancellationToken cancellation
    )
    {
        string[] used = await (
            from reading in records.Readings
            join examination in records.Examinations on reading.ExaminationId equals examination.Id
            where
                examination.CaseId == caseId
                && examination.Id != examinationId
                && examination.ArchivedAt == null
                && examination.State != ExaminationState.Draft
                && reading.EchogenicityGrade != null
            select reading.EchogenicityScale
        )
            .Distinct()
            .ToArrayAsync(cancellation);
        List<Problem> cautions = [];
        for (int index = 0; index < content.Readings.Count && used.Length > 0; index++)
        {
            ReadingDraft reading = content.Readings[index].Values;
            if (reading.EchogenicityGrade is not null && !used.Contains(reading.EchogenicityScale.Id, StringComparer.Ordinal))
            {
                cautions.Add(
                    new(
                        Path(index, ReadingFields.EchogenicityScale),
                        "scale-differs-from-case",
                        ExamCodes.CodeOf(reading.EchogenicityScale),
                        string.Join(", ", used.Select(GradeScales.Find).OfType<GradeScale>().Select(ExamCodes.CodeOf))
                    )
                );
            }
        }

        return cautions;
    }

    /// <summary>Whether another examination of the case that counts has this date and name.</summary>
    public static async Task<Problem?> TakenAsync(
        RecordsContext records,
        Guid caseId,
        Guid examinationId,
        ExaminationContent content,
        CancellationToken cancellation
    )
    {
        string? name = string.IsNullOrWhiteSpace(content.Name) ? null : content.Name.Trim();
        bool taken = await records.Examinations.AnyAsync(
            other =>
                other.CaseId == caseId
                && other.Id != examinationId
                && other.ArchivedAt == null
                && other.State != ExaminationState.Draft
                && other.Date == content.Date
                && other.Name == name,
            cancellation
        );
        return taken ? new Problem("date", "examination-exists", RecordText.Of(content.Date), name ?? "") : null;
    }

    /// <summary>Whether anything was entered beyond the place.</summary>
    public static bool IsRead(ReadingDraft reading) => reading.HasMeasurement || !string.IsNullOrWhiteSpace(reading.Note);

    /// <summary>What a reading is known by within its examination.</summary>
    public static object KeyOf(ReadingDraft reading) =>
        (
            reading.Part,
            reading.Level,
            reading.Level is null ? Known(reading.Zone) : "",
            reading.Plane,
            Known(reading.Lesion),
            Known(reading.Measurer),
            Known(reading.Repeat)
        );

    /// <summary>The lesions of one level share one ligament area: together they cannot be larger than it.</summary>
    private static IEnumerable<Problem> Texts(ExaminationContent content)
    {
        IEnumerable<Problem?> ofContent =
        [
            Checks.Unkeepable("name", content.Name, Checks.LongestName),
            Checks.Unkeepable("examiner", content.Examiner, Checks.LongestName),
            Checks.Unkeepable("transducer", content.Transducer, Checks.LongestName),
            Checks.Unkeepable("note", content.Note, Checks.LongestText),
            Checks.Unkeepable("outsidePractice", content.OutsidePractice, Checks.LongestName),
        ];
        IEnumerable<Problem?> ofRows = content.Readings.SelectMany(
            (row, index) =>
                ReadingValues
                    .Of(row.Values)
                    .Where(field => field.Value is string)
                    .Select(field =>
                        Checks.Unkeepable(
                            Path(index, field.Field),
                            (string?)field.Value,
                            field.Field == ReadingFields.Note ? Checks.LongestText : Checks.LongestName
                        )
                    )
        );
        return ofContent.Concat(ofRows).OfType<Problem>();
    }

    private static IEnumerable<Problem> LesionsBeyondLigament(ExaminationContent content)
    {
        const double Rounding = 1e-9;
        var places = content
            .Readings.Select((row, index) => (row.Values, Index: index))
            .GroupBy(row => KeyOf(row.Values with { Lesion = null }))
            .Where(place => place.Count() > 1);
        foreach (var place in places)
        {
            double lesions = place.Sum(row => row.Values.LesionAreaCm2 ?? 0);
            if (place.Max(row => row.Values.LigamentAreaCm2) is { } ligament && lesions > ligament * (1 + Rounding))
            {
                foreach ((ReadingDraft values, int index) in place)
                {
                    if (values.LesionAreaCm2 > 0)
                    {
                        yield return new Problem(
                            Path(index, ReadingFields.LesionArea),
                            "lesions-larger-than-ligament",
                            lesions.ToString("0.####", CultureInfo.InvariantCulture),
                            RecordText.Of(ligament)
                        );
                    }
                }
            }
        }
    }

    private static string PlaceField(ReadingDraft reading) => reading.ZoneScheme is null ? ReadingFields.Level : ReadingFields.Zone;

    private static string CodeOf(ZoneScheme? scheme) => scheme is { } zones ? ZoneSchemes.CodeOf(zones) : "cm";

    private static string Known(string? text) => text is null ? "" : Folded.Of(text);

    private static string Path(int index, string field) => $"readings[{RecordText.Of(index)}].{field}";
}
