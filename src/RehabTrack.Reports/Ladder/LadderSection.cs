using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Reports.Ladder;

/// <summary>
/// The part of the drawing that belongs to one path and one way of telling its levels: zones and a tape, or two schemes, share no axis.
/// </summary>
internal sealed record LadderSection(LinkPath Path, ZoneScheme? Zones, double FromCm, double ToCm, double TitleY, double Top, double Bottom)
{
    public required IReadOnlyList<LadderItem> Items { get; init; }
}
