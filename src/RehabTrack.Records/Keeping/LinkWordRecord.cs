using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Records.Keeping;

/// <summary>A person's word on a link: pinned or broken, with a reason.</summary>
internal sealed class LinkWordRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public LinkConstraintKind Kind { get; set; }

    public Guid FirstExaminationId { get; set; }

    public LinkPath FirstPath { get; set; }

    public double? FirstLevelCm { get; set; }

    /// <summary>The zone with its scheme, where the level is one.</summary>
    public string? FirstZone { get; set; }

    public Guid SecondExaminationId { get; set; }

    public LinkPath SecondPath { get; set; }

    public double? SecondLevelCm { get; set; }

    /// <summary>The zone with its scheme, where the level is one.</summary>
    public string? SecondZone { get; set; }

    public required string Reason { get; set; }

    public Guid SaidById { get; set; }

    public DateTime SaidAt { get; set; }

    public Guid? WithdrawnById { get; set; }

    public DateTime? WithdrawnAt { get; set; }

    public string? WithdrawnReason { get; set; }
}
