namespace RehabTrack.Records.Keeping;

/// <summary>What a line of a horse's exercise history is.</summary>
internal enum ExerciseEntryKind
{
    PlanSigned,
    DecisionSigned,
    DayLogged,
    ConcernOpened,
    WorkLowered,
    WorkPaused,
    HoldPlaced,
    HoldEnded,
}
