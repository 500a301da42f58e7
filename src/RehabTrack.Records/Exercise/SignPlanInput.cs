using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>A plan to sign.</summary>
public sealed record SignPlanInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The version of the draft that was read.</summary>
    public required Guid Version { get; init; }

    /// <summary>The number of the last line that was seen.</summary>
    public required int SeenNumber { get; init; }

    /// <summary>The first day it counts for: today or later.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Where the vet places the horse.</summary>
    public required PlanPlace Place { get; init; }

    /// <summary>Whether the vet signs it as an advance: any increase is one.</summary>
    public required bool IsAdvance { get; init; }

    /// <summary>When the horse is to be seen again.</summary>
    public required DateOnly RecheckDate { get; init; }
}
