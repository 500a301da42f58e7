using System.Globalization;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Mapping;

/// <summary>A first guess at a mapping, for a person to look over.</summary>
/// <param name="Mapping">The guess; it may lack columns, which <see cref="MappingRules.Check"/> names.</param>
/// <param name="Questions">What the sheet itself leaves open, such as the order of day and month.</param>
public sealed record MappingSuggestion(SheetMapping Mapping, IReadOnlyList<Problem> Questions)
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("limits");

    /// <summary>Guesses from headings and first rows.</summary>
    /// <param name="shape">The sheet.</param>
    public static MappingSuggestion For(SheetShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        List<Problem> questions = [];
        (List<MappedGroup> groups, HashSet<int> grouped) = FindGroups(shape);
        List<MappedColumn> columns = Assign(shape, grouped, groups.Count > 0 ? [ReadingFields.ExaminationDate] : []);
        IEnumerable<string> dates = groups
            .Select(group => group.Date)
            .Concat(
                columns
                    .Where(column => column.Column.EndsWith("_date", StringComparison.Ordinal))
                    .SelectMany(column => shape.Samples.Select(sample => sample.CellAt(column.Index)))
            );
        DateOrder order = OrderOf(dates, questions);
        SheetMapping mapping = new()
        {
            Columns = columns,
            Groups = groups,
            DateOrder = order,
        };
        return new MappingSuggestion(mapping, questions);
    }

    private static (List<MappedGroup> Groups, HashSet<int> Indices) FindGroups(SheetShape shape)
    {
        HashSet<int> indices = [];
        List<(string Date, List<MappedColumn> Columns)> groups = [];
        foreach ((int index, string heading) in shape.Headings.Index())
        {
            if (HeadingWords.DateIn(heading) is not { } dated)
            {
                continue;
            }

            indices.Add(index);
            (string Date, List<MappedColumn> Columns) group = groups.Find(known =>
                string.Equals(known.Date, dated.Date, StringComparison.OrdinalIgnoreCase)
            );
            if (group.Columns is null)
            {
                groups.Add(group = (dated.Date, []));
            }

            // Beside a date "lesion" is a measurement, not the name of one.
            string? meaning = string.Equals(FoldedText.Of(dated.Remainder), "lesion", StringComparison.Ordinal)
                ? ReadingFields.LesionArea
                : HeadingWords.Find(dated.Remainder)?.Column;
            if (meaning is not null && !group.Columns.Exists(column => string.Equals(column.Column, meaning, StringComparison.Ordinal)))
            {
                group.Columns.Add(new MappedColumn(index, meaning, UnitOf(shape, index, meaning)));
            }
        }

        return ([.. groups.Select(group => new MappedGroup(group.Date, group.Columns))], indices);
    }

    private static List<MappedColumn> Assign(SheetShape shape, HashSet<int> taken, IReadOnlyList<string> notWanted)
    {
        List<(int Index, string Column, double Certainty)> guesses = [];
        foreach ((int index, string heading) in shape.Headings.Index())
        {
            if (
                !taken.Contains(index)
                && HeadingWords.Find(heading) is { } found
                && !notWanted.Contains(found.Column, StringComparer.Ordinal)
            )
            {
                guesses.Add((index, found.Column, found.Certainty));
            }
        }

        HashSet<string> used = new(StringComparer.Ordinal);
        return
        [
            .. guesses
                .OrderByDescending(guess => guess.Certainty)
                .ThenBy(guess => guess.Index)
                .Where(guess => used.Add(guess.Column))
                .OrderBy(guess => guess.Index)
                .Select(guess => new MappedColumn(guess.Index, guess.Column, UnitOf(shape, guess.Index, guess.Column))),
        ];
    }

    /// <summary>The unit of the heading; where it names none, mm when a sample is too large for cm.</summary>
    private static MappedUnit UnitOf(SheetShape shape, int index, string column)
    {
        if (!SheetMapping.ColumnsWithUnit.Contains(column, StringComparer.Ordinal))
        {
            return MappedUnit.Centimetre;
        }

        double largest = column switch
        {
            ReadingFields.Level => Limits["highestLevelCm"],
            ReadingFields.ZoneLength => Limits["longestZoneLengthCm"],
            ReadingFields.Thickness => Limits["largestThicknessCm"],
            ReadingFields.Width => Limits["largestWidthCm"],
            _ => Limits["largestAreaCm2"],
        };
        bool beyond = shape.Samples.Any(sample => DecimalText.TryRead(sample.CellAt(index), out double value, out _) && value > largest);
        return HeadingWords.UnitOf(shape.Headings[index]) ?? (beyond ? MappedUnit.Millimetre : MappedUnit.Centimetre);
    }

    private static DateOrder OrderOf(IEnumerable<string> dates, List<Problem> questions)
    {
        string[] given = [.. dates.Where(date => date.Length > 0)];
        DateOrder[] fitting =
        [
            .. Enum.GetValues<DateOrder>().Where(order => Array.TrueForAll(given, date => SheetDate.Read(date, order) is not null)),
        ];
        if (fitting.Length > 0 && fitting[0] == DateOrder.Iso)
        {
            return DateOrder.Iso;
        }

        bool differ = fitting.Length > 1 && given.Any(date => SheetDate.Read(date, fitting[0]) != SheetDate.Read(date, fitting[1]));
        if (differ)
        {
            string example = given.First(date => SheetDate.Read(date, fitting[0]) != SheetDate.Read(date, fitting[1]));
            questions.Add(
                new(
                    ReadingFields.ExaminationDate,
                    "date-order-unclear",
                    example,
                    Iso(SheetDate.Read(example, fitting[0])),
                    Iso(SheetDate.Read(example, fitting[1]))
                )
            );
        }

        return fitting.Length > 0 ? fitting[0] : DateOrder.DayMonthYear;
    }

    private static string Iso(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";
}
