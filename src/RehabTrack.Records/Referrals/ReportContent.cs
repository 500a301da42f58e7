using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Referrals;

/// <summary>
/// What a report on a case says to a referring vet. It holds what was signed, and the words that a vet wrote for this reader; no note, reason
/// or other text of the practice, nothing of owner and trainer.
/// </summary>
public sealed record ReportContent
{
    /// <summary>The practice.</summary>
    public required string PracticeName { get; init; }

    /// <summary>Its number; null when not given.</summary>
    public string? PracticePhone { get; init; }

    /// <summary>The practice's date on which it was put together.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The vet who released it, or would.</summary>
    public required string ReleasedBy { get; init; }

    /// <summary>The horse.</summary>
    public required string HorseName { get; init; }

    /// <summary>Chip or life number; null when not given.</summary>
    public string? Microchip { get; init; }

    /// <summary>Year of birth; null when not given.</summary>
    public int? BirthYear { get; init; }

    /// <summary>Sex; null when not given.</summary>
    public Sex? Sex { get; init; }

    /// <summary>Limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>Structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>Date of the injury; null when not known.</summary>
    public DateOnly? Onset { get; init; }

    /// <summary>When it was first diagnosed; null when not known.</summary>
    public DateOnly? FirstDiagnosis { get; init; }

    /// <summary>The responsible vet; null when none was named.</summary>
    public string? ResponsibleVet { get; init; }

    /// <summary>What the releasing vet wrote for this reader; null when nothing.</summary>
    public string? Words { get; init; }

    /// <summary>The signed examinations, oldest first.</summary>
    public required IReadOnlyList<ReportExamination> Examinations { get; init; }

    /// <summary>The verdict as signed; null where none was.</summary>
    public ReportVerdict? Verdict { get; init; }

    /// <summary>The vet's latest decision, without its reason; null when none was signed.</summary>
    public Decision? Decision { get; init; }

    /// <summary>The day on which that decision was signed.</summary>
    public DateOnly? DecidedOn { get; init; }

    /// <summary>The plan as signed last, without its notes; null when none was.</summary>
    public PlanVersion? Plan { get; init; }
}
