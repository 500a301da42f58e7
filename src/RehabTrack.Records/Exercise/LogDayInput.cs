using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A day's exercise to log.</summary>
public sealed record LogDayInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>What was done and seen.</summary>
    public required DayLog Log { get; init; }

    /// <summary>In words.</summary>
    public LogWords Words { get; init; } = new();

    /// <summary>For whom somebody of the practice enters it; null when the person enters it.</summary>
    public string? OnBehalfOf { get; init; }
}
