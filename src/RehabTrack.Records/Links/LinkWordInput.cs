using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Links;

/// <summary>A word on the link between two places of a case.</summary>
public sealed record LinkWordInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>One place; its examination id is the record's as "D" text.</summary>
    public required PlaceKey First { get; init; }

    /// <summary>The other place, of another examination and the same path.</summary>
    public required PlaceKey Second { get; init; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }
}
