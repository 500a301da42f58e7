using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>What owner and trainer shall read of a decision.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The decision.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Owner">The owner's sentences.</param>
/// <param name="Trainer">The trainer's sentences.</param>
/// <param name="WithPicture">Whether the owner sees the sizes of the injuries, as they are known now.</param>
public sealed record ReleaseDecisionInput(
    Guid CommandId,
    Guid Id,
    Guid Version,
    IReadOnlyList<string> Owner,
    IReadOnlyList<string> Trainer,
    bool WithPicture = false
) : ICommand;
