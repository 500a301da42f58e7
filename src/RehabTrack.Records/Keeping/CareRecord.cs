using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Records.Keeping;

/// <summary>A treatment, medicine or sign of a horse. Corrections and what was put away stay in the history.</summary>
internal sealed class CareRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    /// <summary>The case; null for the whole horse.</summary>
    public Guid? CaseId { get; set; }

    public DateOnly From { get; set; }

    public CareKind Kind { get; set; }

    public DateOnly? Until { get; set; }

    public SignGrade Grade { get; set; }

    public int? LamenessAaep { get; set; }

    public string? Context { get; set; }

    public string? Words { get; set; }

    public DateOnly? StandDownUntil { get; set; }

    public Guid EnteredById { get; set; }

    public DateTime EnteredAt { get; set; }

    public Guid? CorrectedById { get; set; }

    public DateTime? CorrectedAt { get; set; }

    /// <summary>The vet who set the stand-down date.</summary>
    public Guid? StandDownById { get; set; }

    public string? ArchivedReason { get; set; }
}
