namespace RehabTrack.Records.Room;

/// <summary>A command about one record as it was read.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The record.</param>
/// <param name="Version">The version that was read.</param>
public sealed record RecordInput(Guid CommandId, Guid Id, Guid Version) : ICommand;
