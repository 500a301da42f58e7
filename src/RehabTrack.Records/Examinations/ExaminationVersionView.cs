namespace RehabTrack.Records.Examinations;

/// <summary>An examination as it stood.</summary>
/// <param name="Number">1 for the first.</param>
/// <param name="At">When it was signed or amended, UTC.</param>
/// <param name="By">Who.</param>
/// <param name="Reason">Why it was amended; null for the first.</param>
/// <param name="Content">What it said.</param>
public sealed record ExaminationVersionView(int Number, DateTime At, string By, string? Reason, ExaminationContent Content);
