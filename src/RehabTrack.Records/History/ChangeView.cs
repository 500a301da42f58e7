namespace RehabTrack.Records.History;

/// <summary>One line of the history.</summary>
public sealed record ChangeView
{
    /// <summary>The line's number in the practice's trail.</summary>
    public required long Number { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTime At { get; init; }

    /// <summary>Who; empty when nobody was known.</summary>
    public required string By { get; init; }

    /// <summary>The use case that wrote, by its class name.</summary>
    public required string UseCase { get; init; }

    /// <summary>The kind of record: Case, Examination, LinkWord …</summary>
    public required string Kind { get; init; }

    /// <summary>The record.</summary>
    public required Guid RecordId { get; init; }

    /// <summary>Whether the record was made by it.</summary>
    public required bool IsNew { get; init; }

    /// <summary>Who came in or was not let in; null for a change of a record.</summary>
    public AccessEvent? Event { get; init; }

    /// <summary>Whether what the line said was erased.</summary>
    public bool IsErased { get; init; }

    /// <summary>The fields that changed.</summary>
    public required IReadOnlyList<FieldChange> Fields { get; init; }
}
