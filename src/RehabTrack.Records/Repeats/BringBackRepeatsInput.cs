using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Repeat tracings that shall count again.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Ids">The tracings.</param>
public sealed record BringBackRepeatsInput(Guid CommandId, IReadOnlyList<Guid> Ids) : ICommand;
