using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Referrals;

/// <summary>The reports on a case, for those who work in the practice.</summary>
public sealed record CaseReportsView
{
    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The referring vets who stand beside the horse today.</summary>
    public required IReadOnlyList<ReportReader> Readers { get; init; }

    /// <summary>Why the vet who asks may not release one today; null when they may, and for who is no vet.</summary>
    public Problem? ReleaseRefused { get; init; }

    /// <summary>What a report would say today.</summary>
    public required ReportContent Today { get; init; }

    /// <summary>Those that were released, latest first.</summary>
    public required IReadOnlyList<ReportView> Released { get; init; }
}
