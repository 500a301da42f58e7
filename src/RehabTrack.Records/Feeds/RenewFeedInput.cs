using RehabTrack.Records.Room;

namespace RehabTrack.Records.Feeds;

/// <summary>A new calendar address.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="SecretHash">SHA-256 of its secret, 64 lower-case hexadecimal digits. The secret itself never comes here.</param>
public sealed record RenewFeedInput(Guid CommandId, string SecretHash) : ICommand;
