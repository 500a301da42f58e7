namespace RehabTrack.Records.History;

/// <summary>One line of the trail as it is kept, so that somebody else can check its hashes.</summary>
public sealed record TrailRow
{
    /// <summary>Its number in the practice's trail.</summary>
    public required long Number { get; init; }

    /// <summary>Its id.</summary>
    public required Guid Id { get; init; }

    /// <summary>When, UTC.</summary>
    public required DateTime At { get; init; }

    /// <summary>When, on the practice's clock.</summary>
    public required DateTime AtPractice { get; init; }

    /// <summary>Who; the empty id when nobody was known.</summary>
    public required Guid PersonId { get; init; }

    /// <summary>The person's name as it is now; empty when nobody was known.</summary>
    public required string Person { get; init; }

    /// <summary>The command.</summary>
    public required Guid CommandId { get; init; }

    /// <summary>The use case that wrote.</summary>
    public required string UseCase { get; init; }

    /// <summary>The kind of record.</summary>
    public required string Kind { get; init; }

    /// <summary>The record.</summary>
    public required Guid RecordId { get; init; }

    /// <summary>The case; null when none.</summary>
    public required Guid? CaseId { get; init; }

    /// <summary>What it was, as JSON; null for a new record.</summary>
    public required string? BeforeJson { get; init; }

    /// <summary>What it is, as JSON; empty once it was erased.</summary>
    public required string AfterJson { get; init; }

    /// <summary>The salt, hexadecimal; empty once it was erased.</summary>
    public required string Salt { get; init; }

    /// <summary>The hash of the words, hexadecimal.</summary>
    public required string BodyHash { get; init; }

    /// <summary>The hash of the line before, hexadecimal.</summary>
    public required string PreviousHash { get; init; }

    /// <summary>The hash of this line, hexadecimal.</summary>
    public required string Hash { get; init; }
}
