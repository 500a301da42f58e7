using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Examinations;

/// <summary>An examination with all that was entered.</summary>
public sealed record ExaminationView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The case.</summary>
    public required Guid CaseId { get; init; }

    /// <summary>The horse.</summary>
    public required Guid HorseId { get; init; }

    /// <summary>The horse's name.</summary>
    public required string HorseName { get; init; }

    /// <summary>The case's limb.</summary>
    public required Limb Limb { get; init; }

    /// <summary>The case's structure.</summary>
    public required Structure Structure { get; init; }

    /// <summary>The case's landmark.</summary>
    public required Landmark? Landmark { get; init; }

    /// <summary>State.</summary>
    public required ExaminationState State { get; init; }

    /// <summary>What was entered.</summary>
    public required ExaminationContent Content { get; init; }

    /// <summary>For a draft: what was typed, as typed, in the form of the page that sent it; null when nothing was.</summary>
    public required string? Typed { get; init; }

    /// <summary>As the heart reads it.</summary>
    public required Examination Examination { get; init; }

    /// <summary>Who signed; null when not signed here.</summary>
    public required string? SignedBy { get; init; }

    /// <summary>When it was signed, UTC.</summary>
    public required DateTime? SignedAt { get; init; }

    /// <summary>Who wrote it.</summary>
    public required string? EnteredBy { get; init; }

    /// <summary>When its content was last written, UTC.</summary>
    public required DateTime WrittenAt { get; init; }

    /// <summary>For a draft: what would keep it from being signed.</summary>
    public required IReadOnlyList<Problem> Unready { get; init; }

    /// <summary>What was signed or imported and later amended, oldest first, the present one last; empty for a draft.</summary>
    public required IReadOnlyList<ExaminationVersionView> Versions { get; init; }
}
