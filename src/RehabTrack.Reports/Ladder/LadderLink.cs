using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Reports.Ladder;

/// <summary>One link of a track: from a place, through the examinations where it was not read, to the next place.</summary>
internal sealed record LadderLink(IReadOnlyList<LadderItem> Through, TrackStep Step, bool Chosen, bool Dimmed);
