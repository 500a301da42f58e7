using RehabTrack.Records.Room;

namespace RehabTrack.Records.Examinations;

/// <summary>A draft as it shall be.</summary>
public sealed record SaveDraftInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The draft.</summary>
    public required Guid Id { get; init; }

    /// <summary>The version that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>What was entered.</summary>
    public required ExaminationContent Content { get; init; }

    /// <summary>What was typed, as typed, in the form of the page that sends it; null when it sends values only.</summary>
    public string? Typed { get; init; }
}
