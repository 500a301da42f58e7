namespace RehabTrack.Records.Referrals;

/// <summary>A report as it was released.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Reader">The referring vet for whom it was made.</param>
/// <param name="ReleasedAt">When, UTC.</param>
/// <param name="Content">What it says.</param>
public sealed record ReportView(Guid Id, string Reader, DateTime ReleasedAt, ReportContent Content);
