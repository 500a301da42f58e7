using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Reports.Ladder;

/// <summary>An examination's column.</summary>
internal sealed record LadderColumn(
    int Index,
    string ExaminationId,
    DateOnly Date,
    int Day,
    double ShiftCm,
    Examination? Examination,
    double X,
    bool Shown
);
