using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;

namespace RehabTrack.Records.Keeping;

internal sealed class CaseRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public Limb Limb { get; set; }

    public Structure Structure { get; set; }

    public Landmark? Landmark { get; set; }

    public DateOnly? Onset { get; set; }

    public DateOnly? Reinjury { get; set; }

    public DateOnly? FirstDiagnosis { get; set; }

    public string? Diagnosis { get; set; }

    public string? TargetWork { get; set; }

    /// <summary>Target as a share of the first trend examination, 0 to 1; null takes the setting.</summary>
    public double? TargetFraction { get; set; }

    public OtherLimb OtherLimb { get; set; }

    /// <summary>Point of hock to tarsometatarsal joint, measured on this horse.</summary>
    public double? HockToJointCm { get; set; }

    /// <summary>The length of a zone, measured on this horse.</summary>
    public double? ZoneLengthCm { get; set; }

    public Guid? ResponsibleVetId { get; set; }

    /// <summary>The name an imported file gave the case; null when opened here.</summary>
    public string? ImportLabel { get; set; }

    /// <summary>Days between rechecks of this case; null takes the practice's.</summary>
    public int? RecheckIntervalDays { get; set; }

    /// <summary>When it was closed; null while open.</summary>
    public DateTime? ClosedAt { get; set; }

    /// <summary>How it ended.</summary>
    public CaseEnd? End { get; set; }

    /// <summary>The day it ended.</summary>
    public DateOnly? EndedOn { get; set; }

    /// <summary>What the vet who closed it said of the outcome.</summary>
    public string? Outcome { get; set; }

    /// <summary>The vet who signed that.</summary>
    public Guid? ClosedById { get; set; }
}
