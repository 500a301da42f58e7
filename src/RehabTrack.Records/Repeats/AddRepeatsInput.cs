using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Repeat tracings to keep.</summary>
public sealed record AddRepeatsInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The tracings, in the order they were made.</summary>
    public required IReadOnlyList<RepeatTracing> Tracings { get; init; }
}
