using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>A horse that left: the case it is told at, and how.</summary>
public sealed record CloseCaseInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The case at which it is told.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The version of that case that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>Why the horse left.</summary>
    public required CaseEnd End { get; init; }

    /// <summary>The day it left.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The outcome, in the vet's words.</summary>
    public required string Outcome { get; init; }
}
