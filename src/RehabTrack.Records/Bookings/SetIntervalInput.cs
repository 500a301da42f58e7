using RehabTrack.Records.Room;

namespace RehabTrack.Records.Bookings;

/// <summary>The rhythm of one case.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case.</param>
/// <param name="Version">The version of the case that was read.</param>
/// <param name="Days">Days between its rechecks; null takes the practice's.</param>
public sealed record SetIntervalInput(Guid CommandId, Guid CaseId, Guid Version, int? Days) : ICommand;
