namespace RehabTrack.Records.Examinations;

/// <summary>An examination as it stood.</summary>
/// <param name="Number">1 for the first.</param>
/// <param name="At">When it was signed or amended, UTC.</param>
/// <param name="By">Who.</param>
/// <param name="Reason">Why it was amended; null for the first.</param>
/// <param name="Content">What it said.</param>
/// <param name="FiguresId">The figures that were seen when this was signed; null when none were kept.</param>
public sealed record ExaminationVersionView(
    int Number,
    DateTime At,
    string By,
    string? Reason,
    ExaminationContent Content,
    Guid? FiguresId
);
