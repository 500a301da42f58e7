namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>One row of the grid as it was typed: texts, not values, so that nothing typed is lost.</summary>
public sealed record EntryRow
{
    private static readonly string[] Blank = [.. EntryColumns.All.Select(_ => string.Empty)];

    /// <summary>Names the row across saves; it becomes the identity of the reading.</summary>
    public required string Key { get; init; }

    /// <summary>The texts, one a column.</summary>
    public IReadOnlyList<string> Cells { get; init; } = Blank;

    /// <summary>Whether a kept row has as many texts as this version has columns, or as the one before the other limb had.</summary>
    public static bool IsCount(int cells) => cells == Blank.Length || cells == (int)EntryColumn.Note + 1;

    /// <summary>The row with a text for every column: a draft of an earlier version has fewer.</summary>
    public EntryRow Filled() => this with { Cells = [.. Cells, .. Blank.Skip(Cells.Count)] };

    /// <summary>Whether the level comes from the last examination, so that it is expected here.</summary>
    public bool Expected { get; init; }

    /// <summary>Whether the vet said that this level was not read.</summary>
    public bool NotRead { get; init; }

    /// <summary>Which tracing of the place this is: null for the first, then "2", "3".</summary>
    public string? Repeat { get; init; }

    /// <summary>Whether the reading was taken in long axis.</summary>
    public bool LongAxis { get; init; }

    /// <summary>The text of a cell.</summary>
    public string this[EntryColumn column] => Cells[(int)column];

    /// <summary>Whether anything measured was typed.</summary>
    public bool IsRead => !NotRead && EntryColumns.Measured.Any(column => this[column].Trim().Length > 0);

    /// <summary>Whether nothing was typed but what the row started with.</summary>
    public bool IsUntouched =>
        EntryColumns.Measured.Append(EntryColumn.Note).Concat(EntryColumns.OfOtherLimb).All(column => this[column].Trim().Length == 0);

    /// <summary>The row with another text in one cell. Typing a measurement into a row marked not read makes it read again.</summary>
    public EntryRow With(EntryColumn column, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return this with
        {
            Cells = [.. Cells.Select((old, index) => index == (int)column ? text : old)],
            NotRead = NotRead && !(EntryColumns.Measured.Contains(column) && text.Trim().Length > 0),
        };
    }

    public bool Equals(EntryRow? other) =>
        other is not null
        && Key == other.Key
        && Expected == other.Expected
        && NotRead == other.NotRead
        && Repeat == other.Repeat
        && LongAxis == other.LongAxis
        && Cells.SequenceEqual(other.Cells, StringComparer.Ordinal);

    public override int GetHashCode() => HashCode.Combine(Key, NotRead, Repeat, Cells[(int)EntryColumn.Level]);
}
