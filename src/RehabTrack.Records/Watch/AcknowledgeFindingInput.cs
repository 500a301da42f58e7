using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Watch;

/// <summary>What stands is acknowledged.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case on whose page it stands.</param>
/// <param name="Seen">Which occurrence, as the page showed it.</param>
/// <param name="Reason">Why it may stand; needed.</param>
public sealed record AcknowledgeFindingInput(Guid CommandId, Guid CaseId, Acknowledged Seen, string? Reason) : ICommand;
