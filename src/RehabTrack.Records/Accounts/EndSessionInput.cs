using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Which sessions to end.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="SessionId">The one; null for all.</param>
/// <param name="PersonId">Whose; null for those of who asks.</param>
/// <param name="ExceptId">One that goes on; null for none.</param>
public sealed record EndSessionInput(Guid CommandId, Guid? SessionId, Guid? PersonId, Guid? ExceptId) : ICommand;
