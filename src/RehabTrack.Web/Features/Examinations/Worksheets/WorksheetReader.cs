using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>Reads a worksheet: texts in, values and problems out.</summary>
public static class WorksheetReader
{
    private const string NoMeasurement = "no-measurement";

    private static readonly (HeaderField Field, FixedPointKind Kind)[] PointFields =
    [
        (HeaderField.Origin, FixedPointKind.Origin),
        (HeaderField.Division, FixedPointKind.Division),
        (HeaderField.MedialInsertion, FixedPointKind.MedialInsertion),
        (HeaderField.LateralInsertion, FixedPointKind.LateralInsertion),
    ];

    // Here a row without a measurement is looked at only when it has a note.
    private const string NoteAlone = "note-alone";

    /// <summary>Reads everything that was typed. Rows marked not read, and rows without a measurement, are no readings.</summary>
    public static WorksheetReading Read(Worksheet sheet, WorksheetTerms terms)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(terms);
        List<HeaderProblem> headerProblems = [];
        List<CellProblem> cellProblems = [];
        List<CellProblem> cautions = [];
        DateOnly? date = ReadDate(sheet, terms, headerProblems);
        ZoneScheme? zones = ZonesOf(sheet);
        // Zones begin at their scheme's own landmark.
        Landmark? landmark = zones is null && Enum.TryParse(sheet[HeaderField.Landmark], out Landmark given) ? given : null;
        List<FixedPoint> points = ReadPoints(sheet, terms, headerProblems);
        GradeScale scale = ScaleOf(sheet);
        List<Reading> readings = [];
        List<DraftReading> rows = [];
        Dictionary<object, int> seen = [];
        foreach ((int index, EntryRow row) in sheet.Grid.Rows.Index())
        {
            List<CellProblem> problems = [];
            ReadingDraft draft = DraftOf(row, sheet, scale, terms.KeptValues(row.Key), problems);
            rows.Add(new DraftReading(Guid.TryParse(row.Key, out Guid id) ? id : null, row.NotRead ? PlaceOf(draft) : draft));
            if (row.NotRead || row.IsUntouched)
            {
                continue;
            }

            HashSet<EntryColumn> unreadable = [.. problems.Select(problem => problem.Column)];
            problems.AddRange(
                ReadingRules
                    .Check(draft)
                    .Select(problem => problem.Code == NoMeasurement ? problem with { Code = NoteAlone } : problem)
                    .Select(problem => new CellProblem(row.Key, EntryColumns.OfField(problem.Field), problem))
                    .Where(problem => !unreadable.Contains(problem.Column) && (unreadable.Count == 0 || problem.Problem.Code != NoteAlone))
            );
            if (
                problems.Count == 0
                && !seen.TryAdd((draft.Part, draft.Plane, draft.Level, draft.Lesion, draft.Measurer, draft.Repeat), index + 1)
            )
            {
                string first = seen[(draft.Part, draft.Plane, draft.Level, draft.Lesion, draft.Measurer, draft.Repeat)]
                    .ToString(CultureInfo.InvariantCulture);
                problems.Add(new(row.Key, EntryColumn.Level, new Problem(ReadingFields.Level, "row-twice", first)));
            }

            cellProblems.AddRange(problems);
            if (problems.Count == 0)
            {
                cautions.AddRange(
                    ReadingRules.Cautions(draft).Select(caution => new CellProblem(row.Key, EntryColumns.OfField(caution.Field), caution))
                );
                readings.Add(ReadingRules.Make(row.Key, draft));
            }
        }

        ExaminationContent content = new()
        {
            Date = date ?? terms.KeptDate,
            Name = Blank(sheet[HeaderField.Name]),
            Stance = StanceOf(sheet),
            Examiner = Blank(sheet[HeaderField.Examiner]),
            Transducer = Blank(sheet[HeaderField.Transducer]),
            Landmark = landmark,
            Zones = zones,
            FixedPoints = points,
            Standoff = YesOrNo(sheet[HeaderField.Standoff]),
            Coupling = Enum.TryParse(sheet[HeaderField.Coupling], out Coupling coupling) ? coupling : null,
            Clipped = YesOrNo(sheet[HeaderField.Clipped]),
            Note = terms.Kept?.Note,
            OutsidePractice = terms.Kept?.OutsidePractice,
            Readings = rows,
        };
        return new WorksheetReading
        {
            Date = date,
            Content = content,
            Examination = new Examination
            {
                Id = terms.ExaminationId,
                Name = content.Name,
                Date = content.Date,
                Stance = content.Stance,
                State = ExaminationState.Draft,
                Examiner = content.Examiner,
                Transducer = content.Transducer,
                Landmark = landmark,
                Zones = zones,
                FixedPoints = points,
                Readings = readings,
            },
            HeaderProblems = headerProblems,
            CellProblems = cellProblems,
            Cautions = cautions,
        };
    }

    /// <summary>The stance that was chosen; weight-bearing until one is.</summary>
    public static Stance StanceOf(Worksheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Enum.TryParse(sheet[HeaderField.Stance], out Stance stance) ? stance : Stance.WeightBearing;
    }

    /// <summary>The scheme that was chosen; null while levels are read off a tape.</summary>
    public static ZoneScheme? ZonesOf(Worksheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Enum.TryParse(sheet[HeaderField.Zones], out ZoneScheme zones) && Enum.IsDefined(zones) ? zones : null;
    }

    /// <summary>The echogenicity scale that was chosen; 0–3 until one is.</summary>
    public static GradeScale ScaleOf(Worksheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return GradeScales.Find(sheet[HeaderField.EchogenicityScale]) ?? GradeScales.Echogenicity0To3;
    }

    private static DateOnly? ReadDate(Worksheet sheet, WorksheetTerms terms, List<HeaderProblem> problems)
    {
        string text = sheet[HeaderField.Date];
        if (text.Length == 0)
        {
            problems.Add(new(HeaderField.Date, new Problem(ReadingFields.ExaminationDate, "missing")));
            return null;
        }

        if (VisitDate.Parse(text, terms.Today) is not { } date)
        {
            problems.Add(new(HeaderField.Date, new Problem(ReadingFields.ExaminationDate, "date-not-understood", text)));
            return null;
        }

        Problem[] wrong = [.. DateRules.CheckExamination(date, terms.BirthDate, terms.Today)];
        problems.AddRange(wrong.Select(problem => new HeaderProblem(HeaderField.Date, problem)));
        return wrong.Length == 0 ? date : null;
    }

    private static List<FixedPoint> ReadPoints(Worksheet sheet, WorksheetTerms terms, List<HeaderProblem> problems)
    {
        List<FixedPoint> points = [];
        foreach ((HeaderField field, FixedPointKind kind) in PointFields)
        {
            string text = sheet[field].Trim();
            if (text.Length == 0)
            {
                continue;
            }

            if (DecimalText.TryRead(text, out double level, out string? code))
            {
                points.Add(new FixedPoint(kind, new Centimetres(level)));
            }
            else
            {
                problems.Add(new(field, new Problem(FixedPointRules.FieldOf(kind), code!, text)));
            }
        }

        problems.AddRange(
            FixedPointRules
                .Check(points)
                .Concat(ZoneRules.Check(ZonesOf(sheet), terms.Limb, points))
                .Select(problem => new HeaderProblem(
                    PointFields
                        .Where(pair => FixedPointRules.FieldOf(pair.Kind) == problem.Field)
                        .Select(pair => pair.Field)
                        .DefaultIfEmpty(HeaderField.Zones)
                        .First(),
                    problem
                ))
        );
        return points;
    }

    private static ReadingDraft DraftOf(EntryRow row, Worksheet sheet, GradeScale scale, ReadingDraft? kept, List<CellProblem> problems)
    {
        bool diffuse = EntryWords.IsDiffuse(row[EntryColumn.LesionArea]);
        ZoneScheme? zones = ZonesOf(sheet);
        return new ReadingDraft
        {
            Part = Word(EntryColumn.Part, EntryWords.Part),
            LevelCm = zones is null ? Number(EntryColumn.Level) : null,
            ZoneScheme = zones,
            Zone = zones is null ? null : Blank(row[EntryColumn.Level]),
            Plane = row.LongAxis ? ImagePlane.LongAxis : ImagePlane.ShortAxis,
            Lesion = Blank(row[EntryColumn.Lesion]),
            Role = Word(EntryColumn.Role, EntryWords.Role) ?? ReadingRole.None,
            LigamentAreaCm2 = Number(EntryColumn.LigamentArea),
            LesionAreaCm2 = diffuse ? null : Number(EntryColumn.LesionArea),
            LesionIsDiffuse = diffuse,
            LesionPercent = RecordedPercent(row, kept),
            ThicknessCm = Number(EntryColumn.Thickness),
            WidthCm = Number(EntryColumn.Width),
            OtherLimbLigamentAreaCm2 = Number(EntryColumn.OtherLimbLigamentArea),
            OtherLimbThicknessCm = Number(EntryColumn.OtherLimbThickness),
            EchogenicityScale = ScaleOfRow(row, scale, kept),
            EchogenicityGrade = Number(EntryColumn.Echogenicity),
            FibreAlignmentGrade = Number(EntryColumn.FibreAlignment),
            Measurer = Blank(sheet[HeaderField.Measurer]) ?? kept?.Measurer,
            Repeat = row.Repeat,
            Note = Blank(row[EntryColumn.Note]),
        };

        double? Number(EntryColumn column)
        {
            string text = row[column].Trim();
            if (text.Length == 0)
            {
                return null;
            }

            if (DecimalText.TryRead(text, out double value, out string? code))
            {
                return value;
            }

            problems.Add(new(row.Key, column, new Problem(EntryColumns.FieldOf(column), code!, text)));
            return null;
        }

        T? Word<T>(EntryColumn column, Func<string, T?> read)
            where T : struct
        {
            string text = row[column].Trim();
            if (read(text) is { } word)
            {
                return word;
            }

            if (text.Length > 0)
            {
                problems.Add(new(row.Key, column, new Problem(EntryColumns.FieldOf(column), "unknown-word", text, WordsOf(column))));
            }

            return null;
        }
    }

    private static string WordsOf(EntryColumn column) =>
        string.Join(
            ", ",
            column == EntryColumn.Part ? EntryWords.Parts.Select(part => part.Value) : EntryWords.Roles.Select(role => role.Value)
        );

    private static ReadingDraft PlaceOf(ReadingDraft draft) =>
        new()
        {
            Part = draft.Part,
            LevelCm = draft.LevelCm,
            ZoneScheme = draft.ZoneScheme,
            Zone = draft.Zone,
            Plane = draft.Plane,
            Lesion = draft.Lesion,
            Repeat = draft.Repeat,
        };

    // A share that came from a file stands only as long as the areas beside it are the ones it came with.
    private static double? RecordedPercent(EntryRow row, ReadingDraft? kept) =>
        kept?.LesionPercent is { } percent
        && EntryFigures.Number(row[EntryColumn.LigamentArea]) == kept.LigamentAreaCm2
        && EntryFigures.Number(row[EntryColumn.LesionArea]) == kept.LesionAreaCm2
            ? percent
            : null;

    // A grade that is left as it was stays on the scale it was given on.
    private static GradeScale ScaleOfRow(EntryRow row, GradeScale scale, ReadingDraft? kept) =>
        kept?.EchogenicityGrade is { } grade && EntryFigures.Number(row[EntryColumn.Echogenicity]) == grade
            ? kept.EchogenicityScale
            : scale;

    private static bool? YesOrNo(string text) =>
        text switch
        {
            HeaderAnswers.Yes => true,
            HeaderAnswers.No => false,
            _ => null,
        };

    private static string? Blank(string text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
