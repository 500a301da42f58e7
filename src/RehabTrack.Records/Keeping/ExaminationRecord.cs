using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Records.Keeping;

internal sealed class ExaminationRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public DateOnly Date { get; set; }

    /// <summary>Tells two examinations of one date apart.</summary>
    public string? Name { get; set; }

    public Stance Stance { get; set; }

    public ExaminationState State { get; set; }

    public string? Examiner { get; set; }

    public string? Transducer { get; set; }

    /// <summary>Where this examination's tape starts, when not at the case's landmark.</summary>
    public Landmark? Landmark { get; set; }

    /// <summary>The scheme when levels are zones; null when they are read off a tape.</summary>
    public ZoneScheme? Zones { get; set; }

    public double? OriginCm { get; set; }

    public double? DivisionCm { get; set; }

    public double? MedialInsertionCm { get; set; }

    public double? LateralInsertionCm { get; set; }

    public bool? Standoff { get; set; }

    public Coupling? Coupling { get; set; }

    public bool? Clipped { get; set; }

    public string? Note { get; set; }

    /// <summary>The practice that did it, when another one did; a draft with it becomes an outside examination.</summary>
    public string? OutsidePractice { get; set; }

    /// <summary>
    /// What was typed into the page of a draft, as typed: marks of levels not read, and texts that are no values yet. Gone with the
    /// signature.
    /// </summary>
    public string? Typed { get; set; }

    public DateTime? SignedAt { get; set; }

    public Guid? SignedById { get; set; }

    public Guid? EnteredById { get; set; }

    /// <summary>When its content was last written.</summary>
    public DateTime WrittenAt { get; set; }
}
