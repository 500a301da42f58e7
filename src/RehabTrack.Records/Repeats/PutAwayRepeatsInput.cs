using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Repeat tracings that shall count no longer.</summary>
public sealed record PutAwayRepeatsInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The tracings.</summary>
    public required IReadOnlyList<Guid> Ids { get; init; }
}
