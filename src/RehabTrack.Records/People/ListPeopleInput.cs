using RehabTrack.Records.Rights;

namespace RehabTrack.Records.People;

/// <summary>Which people.</summary>
public sealed record ListPeopleInput
{
    /// <summary>Part of the name, mail or telephone; null for all.</summary>
    public string? Query { get; init; }

    /// <summary>Only this role; null for all.</summary>
    public Role? Role { get; init; }

    /// <summary>Those put away instead of those who count.</summary>
    public bool Archived { get; init; }
}
