namespace RehabTrack.Records.Horses;

/// <summary>A horse in a list. Those who do not work here see name and yard only.</summary>
public sealed record HorseRow
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Chip or life number; null when not given.</summary>
    public required string? Microchip { get; init; }

    /// <summary>Year of birth; null when not given.</summary>
    public required int? BirthYear { get; init; }

    /// <summary>The yard it stands in; null when not given.</summary>
    public required string? Yard { get; init; }

    /// <summary>Its owner; null when not given.</summary>
    public required string? Owner { get; init; }

    /// <summary>Its trainer; null when not given.</summary>
    public required string? Trainer { get; init; }

    /// <summary>Its open cases.</summary>
    public required IReadOnlyList<CaseRow> OpenCases { get; init; }

    /// <summary>The latest examination of its open cases; null without one.</summary>
    public DateOnly? LastExamination => OpenCases.Max(row => row.Summary?.LastExamination);

    /// <summary>The earliest recheck due of its open cases; null when none is.</summary>
    public DateOnly? DueOn => OpenCases.Min(row => row.Summary?.DueOn);
}
