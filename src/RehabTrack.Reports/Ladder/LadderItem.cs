using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Reports.Ladder;

/// <summary>A place, or the absence of one, with where it is drawn.</summary>
internal sealed record LadderItem
{
    public required Track Track { get; init; }
    public required int Examination { get; init; }
    public required TrackStep? Step { get; init; }

    /// <summary>On the axis of its section; for a zone its position in the order, which is no length.</summary>
    public required double LevelCm { get; init; }
    public required LadderMark Mark { get; init; }
    public required double HalfWidth { get; init; }
    public required double? Share { get; init; }
    public required string? Label { get; init; }
    public required bool NeedsLook { get; init; }
    public double X { get; set; }
    public double Y { get; set; }
    public bool LabelBeside { get; set; }
    public double LabelWidth { get; set; }
    public double Room { get; set; }
    public double Left => X - HalfWidth;
    public double Right => X + HalfWidth + (LabelBeside ? LabelWidth + 4 : 0);
}
