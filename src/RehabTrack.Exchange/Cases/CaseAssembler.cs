using System.Globalization;
using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Cases;

/// <summary>
/// Puts the rows of one case together. Where rows disagree, the case has the value that most rows state; among values stated equally
/// often, the one of the earliest examination; then the first in order of text. The order of the rows in the file has no say, except that
/// of two readings with the same key the upper one stays.
/// </summary>
public static class CaseAssembler
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");
    private static readonly int Largest = (int)Limits["largestCaseReadings"];
    private static readonly int MostExaminations = (int)Limits["largestCaseExaminations"];
    private static readonly int MostReadings = (int)Limits["largestExaminationReadings"];

    /// <summary>The largest number of readings of one case.</summary>
    public static int LargestCaseReadings => Largest;

    /// <summary>Assembles a case.</summary>
    /// <param name="rows">All rows with its label, at least one.</param>
    /// <param name="state">What stands behind its examinations.</param>
    public static CaseAssembly Assemble(IReadOnlyList<SheetRow> rows, ExaminationState state = ExaminationState.History)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return rows.Count > Largest ? Refuse(rows[0].Case, [.. rows.Select(row => row.Row)])
            : TooMuch(rows) is { } problem ? Refuse(rows[0].Case, rows.Select(row => row.Row), problem)
            : new Work(rows, state).Run();
    }

    // More than a life of one injury holds: the case column, or the date column, was filled down by mistake.
    private static Problem? TooMuch(IReadOnlyList<SheetRow> rows)
    {
        int[] examinations =
        [
            .. rows.CountBy(row => (row.Date, FoldedText.Of(row.Examination ?? ""))).Select(examination => examination.Value),
        ];
        return examinations.Length > MostExaminations ? Counted("case-of-too-many-examinations", examinations.Length, MostExaminations)
            : examinations.Max() > MostReadings ? Counted("examination-too-large", examinations.Max(), MostReadings)
            : null;
    }

    private static Problem Counted(string code, int count, int most) =>
        new(SheetColumns.Case, code, count.ToString(CultureInfo.InvariantCulture), most.ToString(CultureInfo.InvariantCulture));

    private static CaseAssembly Refuse(string label, IEnumerable<int> rows, Problem problem) =>
        new(null, [.. rows.Order().Select(row => new RejectedRow(row, SheetColumns.Case, label, problem))], []);

    /// <summary>The answer to a case that has too many rows to be one.</summary>
    /// <param name="label">Its label.</param>
    /// <param name="rows">The lines of its rows.</param>
    public static CaseAssembly Refuse(string label, IReadOnlyList<int> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return Refuse(label, rows, Counted("case-too-large", rows.Count, Largest));
    }

    private sealed class Work
    {
        // Beside the codes of schemes: levels in cm.
        private const string OnTape = "cm";

        private readonly List<RejectedRow> _rejected = [];
        private readonly List<SheetCaution> _cautions = [];
        private readonly ExaminationState _state;
        private List<SheetRow> _rows;

        public Work(IReadOnlyList<SheetRow> rows, ExaminationState state)
        {
            _rows = [.. rows.OrderBy(row => row.Row).ThenBy(row => row.Plan.Group)];
            _state = state;
        }

        public CaseAssembly Run()
        {
            string label = _rows[0].Case;
            string? horse = Agree(SheetColumns.Horse, "case-disagrees", row => row.Horse, FoldedText.Of);
            string? chip = Agree(SheetColumns.Microchip, "case-disagrees", row => row.Microchip, text => text);
            DateOnly? birth = AgreeDate(ReadingFields.BirthDate, row => row.BirthDate);
            Limb limb =
                AgreeMember(SheetColumns.Limb, "case-disagrees", row => row.Limb == Limb.Unknown ? null : row.Limb, AnatomyCodes.Limbs)
                ?? Limb.Unknown;
            Structure structure =
                AgreeMember(
                    SheetColumns.Structure,
                    "case-disagrees",
                    row => row.Structure == Structure.Unknown ? null : row.Structure,
                    AnatomyCodes.Structures
                ) ?? Structure.Unknown;
            Landmark? landmark = AgreeMember(
                SheetColumns.Landmark,
                "landmarks-mixed",
                // Zones begin at their scheme's landmark, whatever the tapes of the case start at.
                row => row.Reading.ZoneScheme is null ? row.Landmark ?? AnatomyRules.UsualLandmark(limb) : null,
                AnatomyCodes.Landmarks
            );
            landmark ??= AnatomyRules.UsualLandmark(limb) ?? _rows.Max(row => row.Landmark);
            string? zoneLength = Agree(
                ReadingFields.ZoneLength,
                "case-disagrees",
                row => row.ZoneLengthCm is { } length ? Text(length) : null,
                text => text
            );
            SchemesOfLimb(limb);
            OtherLimb otherLimb =
                AgreeMember(
                    SheetColumns.OtherLimb,
                    "case-disagrees",
                    row => row.OtherLimb == OtherLimb.NotRecorded ? null : row.OtherLimb,
                    ExamCodes.OtherLimbs
                ) ?? OtherLimb.NotRecorded;
            DateOnly? onset = AgreeDate(ReadingFields.OnsetDate, row => row.Onset);
            OneScale(ReadingFields.EchogenicityScale, row => row.Reading.EchogenicityGrade is null ? null : row.Reading.EchogenicityScale);
            OneScale(
                ReadingFields.FibreAlignmentScale,
                row => row.Reading.FibreAlignmentGrade is null ? null : row.Reading.FibreAlignmentScale
            );
            NotBeforeBirth(birth, onset);
            IReadOnlyList<Examination> examinations = Examinations();
            if (examinations.Count == 0)
            {
                return new CaseAssembly(null, Ordered(), []);
            }

            Cautions(limb, landmark, onset, chip);
            CaseCourse course = new()
            {
                Id = label,
                Limb = limb,
                Structure = structure,
                Landmark = landmark,
                Onset = onset,
                OtherLimb = otherLimb,
                ZoneLength = zoneLength is null ? null : new Centimetres(double.Parse(zoneLength, CultureInfo.InvariantCulture)),
                Examinations = examinations,
            };
            return new CaseAssembly(new CaseFile(label, new HorseIdentity(horse, chip, birth), course), Ordered(), _cautions);
        }

        private List<RejectedRow> Ordered() => [.. _rejected.OrderBy(rejected => rejected.Row)];

        private void NotBeforeBirth(DateOnly? birth, DateOnly? onset)
        {
            if (birth is not { } born)
            {
                return;
            }

            Drop(
                _rows.Where(row => row.Date < born),
                ReadingFields.ExaminationDate,
                "date-before-birth",
                row => Text(row.Date),
                row => [Text(row.Date), Text(born)]
            );
            if (onset < born)
            {
                Drop(
                    _rows.Where(row => row.Onset is not null),
                    ReadingFields.OnsetDate,
                    "date-before-birth",
                    row => Text(row.Onset!.Value),
                    row => [Text(row.Onset!.Value), Text(born)]
                );
            }
        }

        private void SchemesOfLimb(Limb limb)
        {
            foreach (IGrouping<ZoneScheme?, SheetRow> scheme in _rows.GroupBy(row => row.Reading.ZoneScheme).ToList())
            {
                if (ZoneRules.Check(scheme.Key, limb, []) is [var problem, ..])
                {
                    Drop(scheme, problem.Field, problem.Code, _ => problem.Arguments[0], _ => [.. problem.Arguments]);
                }
            }
        }

        private List<Examination> Examinations()
        {
            NameExaminations();
            List<Examination> examinations = [];
            AgreeWithinVisits(SheetColumns.Stance, "stance-differs", row => ExamCodes.Stances.CodeOf(row.Stance));
            AgreeWithinVisits(SheetColumns.Examiner, "examiner-differs", row => row.Examiner);
            AgreeWithinVisits(SheetColumns.Transducer, "transducer-differs", row => row.Transducer);

            AgreeWithinVisits(
                ReadingFields.ZoneScheme,
                "zone-scheme-differs",
                row => row.Reading.ZoneScheme is { } scheme ? ZoneSchemes.CodeOf(scheme) : OnTape
            );
            foreach (FixedPointKind kind in Enum.GetValues<FixedPointKind>())
            {
                AgreeWithinVisits(FixedPointRules.FieldOf(kind), "fixed-point-differs", row => LevelOf(row, kind));
            }

            DropRepeatedKeys();
            DropLesionsBeyondLigament();
            Dictionary<string, string> spelling = Spellings();
            foreach (
                IGrouping<(DateOnly Date, string Name), SheetRow> visit in ByVisit()
                    .OrderBy(group => group.Key.Date)
                    .ThenBy(group => group.Key.Name, StringComparer.Ordinal)
            )
            {
                string? name = First(visit, row => row.Examination);
                examinations.Add(
                    new Examination
                    {
                        Id = name is null ? Text(visit.Key.Date) : $"{Text(visit.Key.Date)} {name}",
                        Name = name,
                        Date = visit.Key.Date,
                        Stance = visit.First().Stance,
                        State = _state,
                        Examiner = First(visit, row => row.Examiner),
                        Transducer = First(visit, row => row.Transducer),
                        Zones = visit.First().Reading.ZoneScheme,
                        FixedPoints =
                        [
                            .. visit.SelectMany(row => row.FixedPoints).DistinctBy(point => point.Kind).OrderBy(point => point.Kind),
                        ],
                        Readings = [.. visit.Select(row => ReadingRules.Make(row.Id, Respelled(row.Reading, spelling)))],
                    }
                );
            }

            return examinations;
        }

        private static string? LevelOf(SheetRow row, FixedPointKind kind) =>
            row.FixedPoints.Count == 0
                ? null
                : row.FixedPoints.Where(point => point.Kind == kind).Select(point => Text(point.Level.Value)).FirstOrDefault();

        private IEnumerable<IGrouping<(DateOnly Date, string Name), SheetRow>> ByVisit() =>
            _rows.GroupBy(row => (row.Date, FoldedText.Of(row.Examination ?? ""))).ToList();

        /// <summary>Rows without a name belong to the one named examination of their date; where two are named they cannot be told.</summary>
        private void NameExaminations()
        {
            if (_rows.TrueForAll(row => row.Examination is null))
            {
                return;
            }

            foreach (IGrouping<DateOnly, SheetRow> date in _rows.GroupBy(row => row.Date).ToList())
            {
                string[] names = [.. date.Select(row => row.Examination).OfType<string>().DistinctBy(FoldedText.Of)];
                List<SheetRow> unnamed = [.. date.Where(row => row.Examination is null)];
                if (names.Length > 1)
                {
                    Drop(
                        unnamed,
                        SheetColumns.Examination,
                        "examination-unclear",
                        _ => "",
                        _ => [Text(date.Key), string.Join(", ", names)]
                    );
                }
                else if (names.Length == 1 && unnamed.Count > 0)
                {
                    HashSet<SheetRow> toName = new(unnamed, ReferenceEqualityComparer.Instance);
                    _rows = [.. _rows.Select(row => toName.Contains(row) ? row with { Examination = names[0] } : row)];
                }
            }
        }

        private void DropRepeatedKeys()
        {
            Dictionary<ReadingKey, SheetRow> first = [];
            List<(SheetRow Row, SheetRow Upper)> repeated = [];
            foreach (SheetRow row in _rows)
            {
                ReadingKey key = ReadingKey.Of(row);
                if (!first.TryAdd(key, row))
                {
                    repeated.Add((row, first[key]));
                }
            }

            foreach ((SheetRow row, SheetRow upper) in repeated)
            {
                Drop(
                    [row],
                    row.Reading.ZoneScheme is null ? ReadingFields.Level : ReadingFields.Zone,
                    "reading-twice",
                    _ => row.Reading.Zone ?? Text(row.Reading.LevelCm!.Value),
                    _ => [Text(upper.Row)]
                );
            }
        }

        /// <summary>The lesions of one level share one ligament area: together they cannot be larger than it.</summary>
        private void DropLesionsBeyondLigament()
        {
            // Without names no level has two lesions.
            if (_rows.TrueForAll(row => row.Reading.Lesion is null))
            {
                return;
            }

            foreach (
                IGrouping<ReadingKey, SheetRow> place in _rows
                    .GroupBy(row => ReadingKey.Of(row) with { Lesion = "" })
                    .Where(group => group.Count() > 1)
                    .ToList()
            )
            {
                double? ligament = place.Max(row => row.Reading.LigamentAreaCm2);
                double lesions = place.Sum(row => row.Reading.LesionAreaCm2 ?? 0);
                if (ligament is { } area && lesions > area * (1 + 1e-9))
                {
                    Drop(
                        place.Where(row => row.Reading.LesionAreaCm2 > 0),
                        ReadingFields.LesionArea,
                        "lesions-larger-than-ligament",
                        row => Text(row.Reading.LesionAreaCm2!.Value),
                        _ => [lesions.ToString("0.####", CultureInfo.InvariantCulture), Text(area)]
                    );
                }
            }
        }

        /// <summary>One spelling for each name of a lesion or measurer, so that "Core" and "core" stay one.</summary>
        private Dictionary<string, string> Spellings()
        {
            Dictionary<string, string> spelling = new(StringComparer.Ordinal);
            foreach (SheetRow row in _rows)
            {
                Note(row.Reading.Lesion);
                Note(row.Reading.Measurer);
                Note(row.Reading.Repeat);
            }

            return spelling;

            void Note(string? text)
            {
                if (text is null)
                {
                    return;
                }

                string folded = FoldedText.Of(text);
                if (!spelling.TryGetValue(folded, out string? kept) || string.CompareOrdinal(text, kept) < 0)
                {
                    spelling[folded] = text;
                }
            }
        }

        private static ReadingDraft Respelled(ReadingDraft draft, Dictionary<string, string> spelling)
        {
            string? One(string? text) => text is null ? null : spelling[FoldedText.Of(text)];
            (string? lesion, string? measurer, string? repeat) = (One(draft.Lesion), One(draft.Measurer), One(draft.Repeat));
            return (lesion, measurer, repeat) == (draft.Lesion, draft.Measurer, draft.Repeat)
                ? draft
                : draft with
                {
                    Lesion = lesion,
                    Measurer = measurer,
                    Repeat = repeat,
                };
        }

        private void Cautions(Limb limb, Landmark? landmark, DateOnly? onset, string? chip)
        {
            SheetRow first = _rows[0];
            if (landmark is { } given && !AnatomyRules.LandmarksOf(limb).Contains(given))
            {
                Caution(
                    first,
                    SheetColumns.Landmark,
                    AnatomyCodes.Landmarks.CodeOf(given),
                    "landmark-not-of-limb",
                    AnatomyCodes.Landmarks.CodeOf(given),
                    AnatomyCodes.Limbs.CodeOf(limb)
                );
            }

            if (onset is { } injured && _rows.Where(row => row.Date < injured).MinBy(row => row.Row) is { } early)
            {
                Caution(
                    early,
                    ReadingFields.ExaminationDate,
                    Text(early.Date),
                    "examination-before-onset",
                    Text(early.Date),
                    Text(injured)
                );
            }

            if (chip is not null && chip.All(char.IsAsciiDigit) && chip.Length != 15)
            {
                Caution(first, SheetColumns.Microchip, chip, "microchip-length", Text(chip.Length));
            }
        }

        private void Caution(SheetRow row, string column, string value, string code, params string[] arguments) =>
            _cautions.Add(new(row.Row, NameOf(row, column), value, new Problem(column, code, arguments)));

        private void OneScale(string column, Func<SheetRow, GradeScale?> scale) =>
            Agree(column, "scale-changed", row => scale(row) is { } given ? ExamCodes.CodeOf(given) : null, text => text);

        private T? AgreeMember<T>(string column, string code, Func<SheetRow, T?> value, CodeTable<T> codes)
            where T : struct, Enum =>
            AllSay(_rows, value, out T? said) ? said
            : Agree(column, code, row => value(row) is { } member ? codes.CodeOf(member) : null, text => text) is { } winner
                ? codes.Find(winner)
            : null;

        private DateOnly? AgreeDate(string column, Func<SheetRow, DateOnly?> value) =>
            AllSay(_rows, value, out DateOnly? said) ? said
            : Agree(column, "case-disagrees", row => value(row) is { } date ? Text(date) : null, text => text) is { } winner
                ? DateOnly.ParseExact(winner, "yyyy-MM-dd", CultureInfo.InvariantCulture)
            : null;

        private string? Agree(string column, string code, Func<SheetRow, string?> value, Func<string, string> fold) =>
            Agree(_rows, column, code, value, fold);

        private void AgreeWithinVisits(string column, string code, Func<SheetRow, string?> value)
        {
            if (AllSay(_rows, value, out _))
            {
                return;
            }

            foreach (IGrouping<(DateOnly Date, string Name), SheetRow> visit in ByVisit())
            {
                Agree([.. visit], column, code, value, FoldedText.Of);
            }
        }

        private string? Agree(List<SheetRow> rows, string column, string code, Func<SheetRow, string?> value, Func<string, string> fold)
        {
            if (AllSay(rows, value, out string? said))
            {
                return said;
            }

            var stated = rows.Where(row => value(row) is not null)
                .GroupBy(row => fold(value(row)!), StringComparer.Ordinal)
                .OrderByDescending(group => group.Count())
                .ThenBy(group => group.Min(row => row.Date))
                .ThenBy(group => group.Key, StringComparer.Ordinal)
                .ToList();
            if (stated.Count == 0)
            {
                return null;
            }

            string winner = stated[0].Select(row => value(row)!).Min(StringComparer.Ordinal)!;
            Drop(stated.Skip(1).SelectMany(group => group), column, code, row => value(row)!, row => [value(row)!, winner]);
            return winner;
        }

        /// <summary>Whether no row says anything else than the others that say anything, as nearly always; then what they say.</summary>
        private static bool AllSay<T>(List<SheetRow> rows, Func<SheetRow, T?> value, out T? said)
        {
            said = default;
            foreach (SheetRow row in rows)
            {
                T? own = value(row);
                if (own is null)
                {
                    continue;
                }

                if (said is not null && !EqualityComparer<T>.Default.Equals(own, said))
                {
                    return false;
                }

                said = own;
            }

            return true;
        }

        private void Drop(
            IEnumerable<SheetRow> rows,
            string column,
            string code,
            Func<SheetRow, string> value,
            Func<SheetRow, string[]> arguments
        )
        {
            HashSet<SheetRow> dropped = new(rows, ReferenceEqualityComparer.Instance);
            if (dropped.Count == 0)
            {
                return;
            }

            foreach (SheetRow row in dropped)
            {
                _rejected.Add(new(row.Row, NameOf(row, column), value(row), new Problem(column, code, arguments(row))));
            }

            _rows = [.. _rows.Where(row => !dropped.Contains(row))];
        }

        private static string? First(IEnumerable<SheetRow> rows, Func<SheetRow, string?> value) =>
            rows.Select(value).OfType<string>().Min(StringComparer.Ordinal);

        private static string NameOf(SheetRow row, string column) => row.Plan.SourceAt(SheetColumns.IndexOf(column))?.Heading ?? column;

        private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

        private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);

        private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
    }
}
