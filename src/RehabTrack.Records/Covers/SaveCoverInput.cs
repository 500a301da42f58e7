using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>Cover to be set.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="VetId">The vet who is away.</param>
/// <param name="CoveringVetId">The vet who stands in.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
public sealed record SaveCoverInput(Guid CommandId, Guid VetId, Guid CoveringVetId, DateOnly From, DateOnly To) : ICommand;
