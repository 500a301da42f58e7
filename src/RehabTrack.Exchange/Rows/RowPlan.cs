namespace RehabTrack.Exchange.Rows;

/// <summary>How one row of readings is made from one record. A sheet with a column group an examination has a plan a group.</summary>
public sealed class RowPlan
{
    private readonly ColumnSource?[] _sources = new ColumnSource?[SheetColumns.All.Count];

    /// <summary>Makes a plan.</summary>
    /// <param name="sources">The source of each column that has one.</param>
    /// <param name="cellCount">The number of headings: a cell beyond is an error; null looks at none.</param>
    /// <param name="group">The number of the group, from 1; 0 for a plan that is the only one.</param>
    public RowPlan(IReadOnlyDictionary<string, ColumnSource> sources, int? cellCount = null, int group = 0)
    {
        ArgumentNullException.ThrowIfNull(sources);
        foreach ((string column, ColumnSource source) in sources)
        {
            _sources[SheetColumns.IndexOf(column)] = source;
        }

        CellCount = cellCount;
        Group = group;
    }

    /// <summary>The number of headings; null when cells beyond are not looked at.</summary>
    public int? CellCount { get; }

    /// <summary>The number of the group, from 1; 0 for a plan that is the only one.</summary>
    public int Group { get; }

    /// <summary>The source of a column by its place in <see cref="SheetColumns.All"/>; null when it has none.</summary>
    public ColumnSource? SourceAt(int column) => _sources[column];
}
