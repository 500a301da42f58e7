using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>Cover to be set or changed.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="VetId">The vet who is away.</param>
/// <param name="CoveringVetId">The vet who stands in.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Id">The cover to change; null for new cover.</param>
/// <param name="Version">The version that was read; null for new cover.</param>
public sealed record SaveCoverInput(
    Guid CommandId,
    Guid VetId,
    Guid CoveringVetId,
    DateOnly From,
    DateOnly To,
    Guid? Id = null,
    Guid? Version = null
) : ICommand;
