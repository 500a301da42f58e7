namespace RehabTrack.Exchange.Rows;

/// <summary>Where the value of a column comes from.</summary>
public sealed record ColumnSource
{
    /// <summary>The place of the cell in the record; null when the value is a constant.</summary>
    public int? Cell { get; init; }

    /// <summary>The value of every row; null when it comes from a cell.</summary>
    public string? Constant { get; init; }

    /// <summary>What a number is multiplied with to come to the column's unit: 0.01 for mm² to cm², 0.1 for mm to cm.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>In which order a date is written.</summary>
    public DateOrder DateOrder { get; init; }

    /// <summary>The heading in the file, to name the cell by; null takes the column's own name.</summary>
    public string? Heading { get; init; }
}
