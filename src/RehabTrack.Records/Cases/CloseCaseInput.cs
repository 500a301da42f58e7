using RehabTrack.Records.Room;

namespace RehabTrack.Records.Cases;

/// <summary>A case that is resolved, or a horse that left: the case it is told at, and how.</summary>
public sealed record CloseCaseInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The case at which it is told.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The version of that case that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>How it ended.</summary>
    public required CaseEnd End { get; init; }

    /// <summary>The day it ended.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The outcome, in the vet's words.</summary>
    public required string Outcome { get; init; }
}
