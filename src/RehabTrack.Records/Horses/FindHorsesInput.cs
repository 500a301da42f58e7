namespace RehabTrack.Records.Horses;

/// <summary>Which horses, and which page of them.</summary>
public sealed record FindHorsesInput
{
    /// <summary>Words of which each must be found in name, chip, yard, owner or trainer; null for all.</summary>
    public string? Query { get; init; }

    /// <summary>The page, from 1.</summary>
    public int Page { get; init; } = 1;

    /// <summary>Rows a page, 1 to 100.</summary>
    public int PageSize { get; init; } = 25;

    /// <summary>Those put away instead of those who count.</summary>
    public bool Archived { get; init; }
}
