using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Overview;

/// <summary>A case on the start page.</summary>
/// <param name="HorseId">The horse.</param>
/// <param name="HorseName">Its name.</param>
/// <param name="Yard">The yard it stands in; null when not given.</param>
/// <param name="Case">The case; its summary is there.</param>
public sealed record OverviewRow(Guid HorseId, string HorseName, string? Yard, CaseRow Case);
