using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Reports.Ladder;

/// <summary>The part of the drawing that belongs to one path.</summary>
internal sealed record LadderSection(LinkPath Path, double FromCm, double ToCm, double TitleY, double Top, double Bottom)
{
    public required IReadOnlyList<LadderItem> Items { get; init; }
}
