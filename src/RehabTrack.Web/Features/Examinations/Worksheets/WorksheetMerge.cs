using RehabTrack.Web.Components.Conflicts;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>Two people typed into one examination: what only one of them changed is kept, what both changed is asked.</summary>
/// <param name="Merged">Both together, with mine where both differ.</param>
/// <param name="Differences">Where both differ, in the order of the page.</param>
public sealed record WorksheetMerge(Worksheet Merged, IReadOnlyList<WorksheetDifference> Differences)
{
    /// <summary>Merges two worksheets that grew from one.</summary>
    /// <param name="before">What both started from.</param>
    /// <param name="mine">What was typed here.</param>
    /// <param name="theirs">What the other person saved.</param>
    public static WorksheetMerge Of(Worksheet before, Worksheet mine, Worksheet theirs)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(mine);
        ArgumentNullException.ThrowIfNull(theirs);
        List<WorksheetDifference> differences = [];
        Worksheet merged = theirs;
        foreach (HeaderField field in Enum.GetValues<HeaderField>())
        {
            merged = merged.With(
                field,
                ThreeWay.Choose(
                    before[field],
                    mine[field],
                    theirs[field],
                    (left, right) => differences.Add(new(field, null, null, left, right))
                )
            );
        }

        List<EntryRow> rows = [];
        foreach (EntryRow row in mine.Grid.Rows)
        {
            EntryRow? other = theirs.Grid.Find(row.Key);
            EntryRow? start = before.Grid.Find(row.Key);
            if (other is null)
            {
                // They took the row away, or it is new here: what was typed here stays.
                if (start is null || !row.Equals(start))
                {
                    rows.Add(row);
                }

                continue;
            }

            rows.Add(Merge(start ?? new EntryRow { Key = row.Key }, row, other, differences));
        }

        // Rows they added, and rows taken away here that they have changed since.
        foreach (EntryRow row in theirs.Grid.Rows.Where(row => mine.Grid.Find(row.Key) is null))
        {
            if (before.Grid.Find(row.Key) is not { } start || !row.Equals(start))
            {
                rows.Add(row);
            }
        }

        return new WorksheetMerge(merged.With(new EntryGrid(rows)), differences);
    }

    /// <summary>The merged worksheet with the other person's value in one place.</summary>
    public WorksheetMerge TakeTheirs(WorksheetDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        if (difference.Field is { } field)
        {
            return this with { Merged = Merged.With(field, difference.Theirs) };
        }

        EntryRow[] rows =
        [
            .. Merged.Grid.Rows.Select(row =>
                row.Key != difference.RowKey ? row : row with { Cells = Replace(row.Cells, difference.Column!.Value, difference.Theirs) }
            ),
        ];
        return this with { Merged = Merged.With(new EntryGrid(rows)) };
    }

    private static EntryRow Merge(EntryRow before, EntryRow mine, EntryRow theirs, List<WorksheetDifference> differences)
    {
        EntryRow merged = mine;
        foreach (EntryColumn column in EntryColumns.All)
        {
            string text = ThreeWay.Choose(
                before[column],
                mine[column],
                theirs[column],
                (left, right) => differences.Add(new(null, mine.Key, column, left, right))
            );
            merged = merged with { Cells = Replace(merged.Cells, column, text) };
        }

        // A mark has two states: where mine and theirs differ, one of us left it as it was.
        return merged with
        {
            NotRead = mine.NotRead == before.NotRead ? theirs.NotRead : mine.NotRead,
        };
    }

    private static string[] Replace(IReadOnlyList<string> cells, EntryColumn column, string text) =>
        [.. cells.Select((old, index) => index == (int)column ? text : old)];
}
