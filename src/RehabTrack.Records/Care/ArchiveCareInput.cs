using RehabTrack.Records.Room;

namespace RehabTrack.Records.Care;

/// <summary>An entry that does not count.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The entry.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Reason">Why it does not count.</param>
public sealed record ArchiveCareInput(Guid CommandId, Guid Id, Guid Version, string Reason) : ICommand;
