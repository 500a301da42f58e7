using System.Globalization;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Rows;

/// <summary>Makes a row of a record by a plan, with all that is wrong with it by itself.</summary>
public sealed class RowParser
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");
    private static readonly FixedPointKind[] FixedPointKinds = Enum.GetValues<FixedPointKind>();
    private static readonly int LongestName = (int)Limits["longestName"];
    private static readonly int MostRepeats = (int)Limits["largestRepeat"];
    private static readonly int LongestNote = (int)Limits["longestNote"];

    // What is measured in cm or cm²; the level is not among them: tapes are often read in whole centimetres.
    private static readonly string[] Sizes = [.. SheetColumns.Measurements.Where(SheetColumns.WithUnit.Contains)];

    private readonly DateOnly? _today;
    private readonly List<RejectedRow> _rejected;
    private readonly List<SheetCaution> _cautions;
    private SheetRecord _record;
    private RowPlan _plan = new(new Dictionary<string, ColumnSource>(StringComparer.Ordinal));
    private bool _failed;

    /// <summary>Makes a parser.</summary>
    /// <param name="today">The practice's date; null where nothing may be said of the future.</param>
    /// <param name="rejected">Takes what is wrong.</param>
    /// <param name="cautions">Takes what is worth a second look.</param>
    public RowParser(DateOnly? today, List<RejectedRow> rejected, List<SheetCaution> cautions)
    {
        _today = today;
        _rejected = rejected;
        _cautions = cautions;
    }

    /// <summary>The row of a record; null when it is wrong, or when the plan is a group and holds no measurement.</summary>
    /// <param name="record">The record.</param>
    /// <param name="plan">Where its values come from.</param>
    public SheetRow? Parse(SheetRecord record, RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        _record = record;
        _plan = plan;
        _failed = false;
        if (plan.Group > 0 && SheetColumns.Measurements.All(column => Cell(column).Length == 0))
        {
            return null;
        }

        NoCellsBeyondHeadings();
        string label = Text(SheetColumns.Case, LongestName) ?? Missing(SheetColumns.Case);
        DateOnly? date = Date(ReadingFields.ExaminationDate);
        if (date is null && Cell(ReadingFields.ExaminationDate).Length == 0)
        {
            Missing(ReadingFields.ExaminationDate);
        }

        DateOnly? onset = Date(ReadingFields.OnsetDate);
        DateOnly? birth = Date(ReadingFields.BirthDate);
        ReadingDraft draft = ReadDraft();
        Landmark? landmark = LandmarkOf(draft);
        double? zoneLength = Number(ReadingFields.ZoneLength);
        SheetRow row = new()
        {
            Row = record.Row,
            Id = IdOf(record.Row, plan.Group),
            Case = label,
            Horse = Text(SheetColumns.Horse, LongestName),
            Microchip = Microchip(),
            BirthDate = birth,
            Limb = Code(SheetColumns.Limb, AnatomyCodes.Limbs) ?? Limb.Unknown,
            Structure = Code(SheetColumns.Structure, AnatomyCodes.Structures) ?? Structure.Unknown,
            Landmark = landmark,
            Onset = onset,
            Date = date ?? default,
            Examination = Text(SheetColumns.Examination, LongestName),
            Stance = Code(SheetColumns.Stance, ExamCodes.Stances) ?? Stance.WeightBearing,
            Examiner = Text(SheetColumns.Examiner, LongestName),
            Transducer = Text(SheetColumns.Transducer, LongestName),
            OtherLimb = Code(SheetColumns.OtherLimb, ExamCodes.OtherLimbs) ?? OtherLimb.NotRecorded,
            FixedPoints = FixedPoints(draft.ZoneScheme),
            ZoneLengthCm = zoneLength,
            Reading = draft,
            Plan = plan,
        };
        Reject(birth is { } born ? DateRules.CheckBirth(born, _today) : []);
        Reject(date is { } visited ? DateRules.CheckExamination(visited, birth, _today) : []);
        Reject(onset is { } injured ? DateRules.CheckOnset(injured, birth, _today) : []);
        Reject(ZoneRules.CheckLength(zoneLength));
        if (_failed)
        {
            return null;
        }

        foreach (Problem caution in ReadingRules.Cautions(draft))
        {
            _cautions.Add(new(record.Row, NameOf(caution.Field), Cell(caution.Field), caution));
        }

        return row;
    }

    private static string IdOf(int row, int group) =>
        group == 0 ? row.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{row}:{group}");

    private ReadingDraft ReadDraft()
    {
        int before = _rejected.Count;
        GradeScale? echogenicityScale = Scale(ReadingFields.EchogenicityScale, ExamCodes.EchogenicityScales);
        GradeScale? fibreScale = Scale(ReadingFields.FibreAlignmentScale, ExamCodes.FibreAlignmentScales);
        bool diffuse = string.Equals(FoldedText.Of(Cell(ReadingFields.LesionArea)), ExamCodes.Diffuse, StringComparison.Ordinal);
        ReadingDraft draft = new()
        {
            Part = Code(ReadingFields.Part, AnatomyCodes.Parts),
            LevelCm = Number(ReadingFields.Level),
            ZoneScheme = ZoneSchemeOf(),
            Zone = Text(ReadingFields.Zone, LongestName),
            Plane = Code(ReadingFields.Plane, AnatomyCodes.Planes) ?? ImagePlane.ShortAxis,
            Lesion = Text(ReadingFields.Lesion, LongestName),
            Role = Code(ReadingFields.Role, ExamCodes.Roles) ?? ReadingRole.None,
            LigamentAreaCm2 = Number(ReadingFields.LigamentArea),
            LesionAreaCm2 = diffuse ? null : Number(ReadingFields.LesionArea),
            LesionIsDiffuse = diffuse,
            LesionPercent = Number(ReadingFields.LesionPercent, sign: "%"),
            ThicknessCm = Number(ReadingFields.Thickness),
            WidthCm = Number(ReadingFields.Width),
            OtherLimbLigamentAreaCm2 = Number(ReadingFields.OtherLimbLigamentArea),
            OtherLimbThicknessCm = Number(ReadingFields.OtherLimbThickness),
            EchogenicityScale = echogenicityScale ?? GradeScales.Echogenicity0To3,
            EchogenicityGrade = Number(ReadingFields.EchogenicityGrade),
            FibreAlignmentScale = fibreScale ?? GradeScales.FibreAlignment0To3,
            FibreAlignmentGrade = Number(ReadingFields.FibreAlignmentGrade),
            Measurer = Text(ReadingFields.Measurer, LongestName),
            Repeat = Repeat(),
            Note = Text(ReadingFields.Note, LongestNote),
        };
        RejectReading(ReadingRules.Check(draft), before);
        return draft;
    }

    private ZoneScheme? ZoneSchemeOf()
    {
        string cell = Cell(ReadingFields.ZoneScheme);
        if (cell.Length == 0)
        {
            return null;
        }

        ZoneScheme? scheme = ZoneSchemes.Find(cell);
        if (scheme is null)
        {
            Add(ReadingFields.ZoneScheme, cell, "unknown-word", cell, string.Join(", ", ZoneSchemes.Codes));
        }

        return scheme;
    }

    // The zones of a scheme begin at its own landmark.
    private Landmark? LandmarkOf(ReadingDraft draft)
    {
        Landmark? landmark = Code(SheetColumns.Landmark, AnatomyCodes.Landmarks);
        if (landmark is { } given && draft.ZoneScheme is { } scheme && given != ZoneSchemes.LandmarkOf(scheme))
        {
            Add(
                SheetColumns.Landmark,
                Cell(SheetColumns.Landmark),
                "zone-scheme-other-landmark",
                AnatomyCodes.Landmarks.CodeOf(given),
                ZoneSchemes.CodeOf(scheme),
                AnatomyCodes.Landmarks.CodeOf(ZoneSchemes.LandmarkOf(scheme))
            );
        }

        return landmark;
    }

    private void RejectReading(IReadOnlyList<Problem> problems, int before)
    {
        if (problems.Count == 0)
        {
            return;
        }

        HashSet<string> named = [.. _rejected.Skip(before).Select(rejection => rejection.Problem.Field)];
        if (named.Contains(ReadingFields.ZoneScheme))
        {
            named.UnionWith([ReadingFields.Zone, ReadingFields.Level]);
        }

        // A cell that could not be read has its own message: a second one that calls it missing would mislead.
        Reject(
            problems.Where(problem =>
                !named.Contains(problem.Field)
                && !(string.Equals(problem.Code, "no-measurement", StringComparison.Ordinal) && named.Overlaps(SheetColumns.Measurements))
            )
        );
    }

    private IReadOnlyList<FixedPoint> FixedPoints(ZoneScheme? scheme)
    {
        List<FixedPoint>? points = null;
        foreach (FixedPointKind kind in FixedPointKinds)
        {
            if (Number(FixedPointRules.FieldOf(kind)) is { } level)
            {
                (points ??= []).Add(new FixedPoint(kind, new Centimetres(level)));
            }
        }

        if (points is null)
        {
            return [];
        }

        Reject(FixedPointRules.Check(points));
        Reject(ZoneRules.Check(scheme, Limb.Unknown, points));
        return points;
    }

    private void NoCellsBeyondHeadings()
    {
        if (_plan.CellCount is not { } count || _record.Cells.Count <= count)
        {
            return;
        }

        string? beyond = Enumerable
            .Range(count, _record.Cells.Count - count)
            .Select(index => _record.CellAt(index))
            .FirstOrDefault(cell => cell.Length > 0);
        if ((beyond ?? SizeInTwo(_record.Cells.Count - count)) is { } cell)
        {
            Add("", cell, new Problem("", "more-cells-than-headings", Invariant(_record.Cells.Count), Invariant(count)));
        }
    }

    // Sheets are often filled up with empty cells. But when the last column is empty, an empty cell too many is also all that is left to see
    // of a decimal comma, and the size before the comma would be taken for the whole: as many sizes of digits alone, with digits alone in the
    // next cell, as there are cells too many. The first of them, as "0,40"; null when there are not.
    private string? SizeInTwo(int beyond)
    {
        string[] broken =
        [
            .. Sizes
                .Select(column => _plan.SourceAt(SheetColumns.IndexOf(column)))
                .Where(source => source is { Cell: not null, Factor: 1 })
                .Select(source => (Whole: _record.CellAt(source!.Cell!.Value), After: _record.CellAt(source.Cell.Value + 1)))
                .Where(pair => IsDigits(pair.Whole) && IsDigits(pair.After) && pair.After != "0")
                .Select(pair => $"{pair.Whole},{pair.After}"),
        ];
        return broken.Length == beyond ? broken[0] : null;
    }

    private static bool IsDigits(string cell) => cell.Length > 0 && cell.All(char.IsAsciiDigit);

    private string Cell(string column)
    {
        ColumnSource? source = _plan.SourceAt(SheetColumns.IndexOf(column));
        return source is null ? ""
            : source.Cell is { } cell ? _record.CellAt(cell)
            : source.Constant ?? "";
    }

    private string? Text(string column, int longest)
    {
        string text = CellText.Unguard(Cell(column));
        if (text.Length > longest)
        {
            Add(column, text[..60], "text-too-long", Invariant(text.Length), Invariant(longest));
            return null;
        }

        return text.Length == 0 ? null : text;
    }

    // A number, as a spreadsheet writes it; a word beside a tracing is most often a note that slipped a column.
    private string? Repeat()
    {
        if (Text(ReadingFields.Repeat, LongestName) is not { } text)
        {
            return null;
        }

        if (DecimalText.TryRead(text, out double number, out _) && number >= 1 && number <= MostRepeats && number == Math.Floor(number))
        {
            return Invariant((int)number);
        }

        Add(ReadingFields.Repeat, text, "repeat-not-a-number", text, Invariant(MostRepeats));
        return null;
    }

    private string Missing(string column)
    {
        if (Cell(column).Length == 0)
        {
            Add(column, "", "missing");
        }

        return "";
    }

    private string? Microchip()
    {
        if (Text(SheetColumns.Microchip, LongestName) is not { } text)
        {
            return null;
        }

        string plain = string.Concat(text.Where(letter => !char.IsWhiteSpace(letter) && letter != '-'));
        if (
            plain.Contains('+', StringComparison.Ordinal)
            || plain.Contains(',', StringComparison.Ordinal)
            || plain.Contains('.', StringComparison.Ordinal)
        )
        {
            Add(SheetColumns.Microchip, text, "microchip-rounded", text);
        }
        else if (!plain.All(char.IsAsciiLetterOrDigit))
        {
            Add(SheetColumns.Microchip, text, "microchip-letters", text);
        }

        return plain.ToUpperInvariant();
    }

    private DateOnly? Date(string column)
    {
        string cell = Cell(column);
        if (cell.Length == 0)
        {
            return null;
        }

        DateOrder order = _plan.SourceAt(SheetColumns.IndexOf(column))!.DateOrder;
        DateOnly? date = SheetDate.Read(cell, order);
        if (date is null)
        {
            Add(column, cell, order == DateOrder.Iso ? "date-not-iso" : "date-not-readable", cell);
        }

        return date;
    }

    private T? Code<T>(string column, CodeTable<T> table)
        where T : struct, Enum
    {
        string cell = Cell(column);
        if (cell.Length == 0)
        {
            return null;
        }

        T? member = table.Find(cell);
        if (member is null)
        {
            Add(column, cell, "unknown-word", cell, string.Join(", ", table.Codes));
        }

        return member;
    }

    private GradeScale? Scale(string column, IReadOnlyDictionary<string, GradeScale> scales)
    {
        string cell = Cell(column);
        if (cell.Length == 0)
        {
            return null;
        }

        string plain = FoldedText.Of(cell.Replace('–', '-'));
        GradeScale? scale = scales.FirstOrDefault(pair => FoldedText.Of(pair.Key) == plain).Value;
        if (scale is null)
        {
            Add(column, cell, "unknown-word", cell, string.Join(", ", scales.Keys));
        }

        return scale;
    }

    private double? Number(string column, string? sign = null)
    {
        string cell = Cell(column);
        string text = sign is not null && cell.EndsWith(sign, StringComparison.Ordinal) ? cell[..^sign.Length] : cell;
        if (text.Length == 0)
        {
            return null;
        }

        double factor = _plan.SourceAt(SheetColumns.IndexOf(column))!.Factor;
        if (factor != 1 && DecimalText.CouldBeThousands(text))
        {
            Add(column, cell, DecimalText.Ambiguous, cell);
            return null;
        }

        if (!DecimalText.TryRead(text, out double value, out string? code))
        {
            Add(column, cell, code!, cell);
            return null;
        }

        // Decimal arithmetic: 9.4 mm are 0.94 cm, not one bit beside it. A number too large for it is too large for any limit.
        return factor == 1 || Math.Abs(value) > 1e9 ? value * factor : (double)((decimal)value * (decimal)factor);
    }

    private void Reject(IEnumerable<Problem> problems)
    {
        foreach (Problem problem in problems)
        {
            Add(problem.Field, Cell(problem.Field), problem);
        }
    }

    private void Add(string column, string value, string code, params string[] arguments) =>
        Add(column, value, new Problem(column, code, arguments));

    private void Add(string column, string value, Problem problem)
    {
        _failed = true;
        _rejected.Add(new(_record.Row, NameOf(column), value, problem));
    }

    private string NameOf(string column) => column.Length == 0 ? "" : _plan.SourceAt(SheetColumns.IndexOf(column))?.Heading ?? column;

    private static string Invariant(int value) => value.ToString(CultureInfo.InvariantCulture);
}
