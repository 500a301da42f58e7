using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Whose cv of a size the practice takes.</summary>
public sealed record TakeErrorInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The version of the practice that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>The size.</summary>
    public required MeasuredSize Size { get; init; }

    /// <summary>The cv of the practice's own repeats that was shown; null goes back to the table.</summary>
    public required double? ShownCv { get; init; }
}
