namespace RehabTrack.Reports.Ladder;

/// <summary>Which mark stands for a place: a bar claims an area, so a place without one gets another mark.</summary>
internal enum LadderMark
{
    Bar,
    LesionBar,
    ShareDisc,
    Calliper,
    Grades,
    Nothing,
    NotRead,
}
