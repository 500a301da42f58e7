using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Watch;

/// <summary>A horse in the list of what needs a person.</summary>
/// <param name="HorseId">The horse.</param>
/// <param name="HorseName">Its name.</param>
/// <param name="Yard">The yard it stands in; null when not given.</param>
/// <param name="Cases">Its open cases.</param>
/// <param name="Findings">What stands, most severe first, then what has stood longest.</param>
public sealed record StandingRow(
    Guid HorseId,
    string HorseName,
    string? Yard,
    IReadOnlyList<CaseRow> Cases,
    IReadOnlyList<WatchedFinding> Findings
);
