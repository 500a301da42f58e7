using RehabTrack.Records.Room;

namespace RehabTrack.Records.Links;

/// <summary>A word on a link to take back.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="Id">The word.</param>
/// <param name="Version">The version that was read.</param>
/// <param name="Reason">Why.</param>
public sealed record WithdrawLinkWordInput(Guid CommandId, Guid Id, Guid Version, string Reason) : ICommand;
