using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Whose words are erased.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The person, who was put away before.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="NameInstead">What stands where the name stood.</param>
public sealed record ErasePersonInput(Guid CommandId, Guid Id, Guid Version, string NameInstead) : ICommand;
