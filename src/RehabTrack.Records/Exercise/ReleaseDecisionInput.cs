using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>What owner and trainer shall read of a decision.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The decision.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Release">The sentences.</param>
public sealed record ReleaseDecisionInput(Guid CommandId, Guid Id, Guid Version, Release Release) : ICommand;
