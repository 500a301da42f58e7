using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Cases;

/// <summary>What stands behind an examination.</summary>
public sealed record ExaminationCard
{
    /// <summary>Identity; the heart's examination carries it as "D" text.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>The practice's date of the visit.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Tells two of one date apart; null for the only one.</summary>
    public required string? Name { get; init; }

    /// <summary>State.</summary>
    public required ExaminationState State { get; init; }

    /// <summary>Stance.</summary>
    public required Stance Stance { get; init; }

    /// <summary>Who examined.</summary>
    public required string? Examiner { get; init; }

    /// <summary>The other practice; null when done here.</summary>
    public required string? OutsidePractice { get; init; }

    /// <summary>Who signed; null when not signed here.</summary>
    public required string? SignedBy { get; init; }

    /// <summary>When it was signed, UTC.</summary>
    public required DateTime? SignedAt { get; init; }

    /// <summary>Who wrote it, for drafts.</summary>
    public required string? EnteredBy { get; init; }

    /// <summary>When its content was last written, UTC.</summary>
    public required DateTime WrittenAt { get; init; }

    /// <summary>How often it was amended.</summary>
    public required int Amendments { get; init; }

    /// <summary>How many readings it holds.</summary>
    public required int ReadingCount { get; init; }
}
