using System.Globalization;
using RehabTrack.Exchange.Rows;
using RehabTrack.Exchange.Sheets;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Mapping;

/// <summary>Whether a mapping can be used with a sheet, and how its rows are read then.</summary>
public static class MappingRules
{
    /// <summary>All that a mapping lacks or has too much; the field names the column of the import sheet. Empty when it can be used.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <param name="shape">The headings it is for.</param>
    public static IReadOnlyList<Problem> Check(SheetMapping mapping, SheetShape shape)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        ArgumentNullException.ThrowIfNull(shape);
        MappedColumn[] all = [.. mapping.Columns, .. mapping.Groups.SelectMany(group => group.Columns)];
        List<Problem> problems = [];
        foreach (
            MappedColumn column in all.Where(column => column.Index < 0 || column.Index >= shape.Headings.Count || !Known(column.Column))
        )
        {
            problems.Add(new(column.Column, "mapping-not-of-sheet", column.Column, Text(column.Index + 1)));
        }

        foreach (string column in mapping.Constants.Keys.Where(column => !Known(column)))
        {
            problems.Add(new(column, "mapping-not-of-sheet", column, ""));
        }

        foreach (IGrouping<int, MappedColumn> twice in all.GroupBy(column => column.Index).Where(group => group.Count() > 1))
        {
            problems.Add(new(twice.First().Column, "mapping-column-twice", HeadingAt(shape, twice.Key)));
        }

        foreach (IReadOnlyList<string> plan in ColumnsOfPlans(mapping))
        {
            problems.AddRange(
                plan.GroupBy(column => column, StringComparer.Ordinal)
                    .Where(group => group.Count() > 1)
                    .Select(group => new Problem(group.Key, "mapping-meaning-twice", group.Key))
            );
            problems.AddRange(
                SheetColumns
                    .MissingFrom(column => plan.Contains(column, StringComparer.Ordinal))
                    .Select(column => new Problem(column, "mapping-missing", column))
            );
            if (!plan.Intersect(SheetColumns.Measurements, StringComparer.Ordinal).Any())
            {
                problems.Add(new(ReadingFields.LigamentArea, "mapping-no-measurement"));
            }
        }

        problems.AddRange(
            mapping
                .Groups.Where(group => SheetDate.Read(group.Date, mapping.DateOrder) is null)
                .Select(group => new Problem(ReadingFields.ExaminationDate, "mapping-group-date", group.Date))
        );
        return [.. problems.DistinctBy(problem => (problem.Field, problem.Code, string.Join('\n', problem.Arguments)))];
    }

    /// <summary>How rows are read: one plan, or one a group.</summary>
    /// <param name="mapping">A mapping without problems.</param>
    /// <param name="shape">The headings it is for.</param>
    public static IReadOnlyList<RowPlan> Plans(SheetMapping mapping, SheetShape shape)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        ArgumentNullException.ThrowIfNull(shape);
        Dictionary<string, ColumnSource> common = mapping.Constants.ToDictionary(
            pair => pair.Key,
            pair => new ColumnSource { Constant = pair.Value, DateOrder = mapping.DateOrder },
            StringComparer.Ordinal
        );
        AddCells(common, mapping.Columns, mapping, shape);
        if (mapping.Groups.Count == 0)
        {
            return [new RowPlan(common, shape.Headings.Count)];
        }

        List<RowPlan> plans = [];
        foreach ((int index, MappedGroup group) in mapping.Groups.Index())
        {
            Dictionary<string, ColumnSource> sources = new(common, StringComparer.Ordinal)
            {
                [ReadingFields.ExaminationDate] = new ColumnSource { Constant = group.Date, DateOrder = mapping.DateOrder },
            };
            AddCells(sources, group.Columns, mapping, shape);
            // Cells beyond the headings are told once, by the first group.
            plans.Add(new RowPlan(sources, index == 0 ? shape.Headings.Count : null, index + 1));
        }

        return plans;
    }

    private static void AddCells(
        Dictionary<string, ColumnSource> sources,
        IEnumerable<MappedColumn> columns,
        SheetMapping mapping,
        SheetShape shape
    )
    {
        foreach (MappedColumn column in columns)
        {
            bool small =
                column.Unit == MappedUnit.Millimetre && SheetMapping.ColumnsWithUnit.Contains(column.Column, StringComparer.Ordinal);
            sources[column.Column] = new ColumnSource
            {
                Cell = column.Index,
                Factor =
                    !small ? 1
                    : SheetMapping.IsArea(column.Column) ? 0.01
                    : 0.1,
                DateOrder = mapping.DateOrder,
                Heading = HeadingAt(shape, column.Index),
            };
        }
    }

    private static IEnumerable<IReadOnlyList<string>> ColumnsOfPlans(SheetMapping mapping)
    {
        string[] common =
        [
            .. mapping.Columns.Select(column => column.Column),
            .. mapping.Constants.Where(pair => pair.Value.Length > 0).Select(pair => pair.Key),
        ];
        return mapping.Groups.Count == 0
            ? [common]
            : mapping.Groups.Select(group =>
                (IReadOnlyList<string>)[.. common, ReadingFields.ExaminationDate, .. group.Columns.Select(column => column.Column)]
            );
    }

    private static bool Known(string column) => SheetColumns.All.Contains(column, StringComparer.Ordinal);

    private static string HeadingAt(SheetShape shape, int index) =>
        index >= 0 && index < shape.Headings.Count && shape.Headings[index].Length > 0 ? shape.Headings[index] : Text(index + 1);

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
