using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Exchange.Rows;

/// <summary>A row that is right by itself; whether it fits the other rows of its case is another question.</summary>
public sealed record SheetRow
{
    /// <summary>The line of the file.</summary>
    public required int Row { get; init; }

    /// <summary>Identity of the reading: the line, with the group behind a colon in a sheet of column groups.</summary>
    public required string Id { get; init; }

    /// <summary>The case's label.</summary>
    public required string Case { get; init; }

    /// <summary>The horse's name.</summary>
    public string? Horse { get; init; }

    /// <summary>Chip or life number, without spaces and hyphens.</summary>
    public string? Microchip { get; init; }

    /// <summary>The horse's date of birth.</summary>
    public DateOnly? BirthDate { get; init; }

    /// <summary>The limb; unknown when blank.</summary>
    public Limb Limb { get; init; }

    /// <summary>The structure; unknown when blank.</summary>
    public Structure Structure { get; init; }

    /// <summary>The landmark; null when blank.</summary>
    public Landmark? Landmark { get; init; }

    /// <summary>The date of the injury; null when blank.</summary>
    public DateOnly? Onset { get; init; }

    /// <summary>The date of the examination.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The name that tells two examinations of a date apart; null when blank.</summary>
    public string? Examination { get; init; }

    /// <summary>The stance.</summary>
    public Stance Stance { get; init; }

    /// <summary>Who examined.</summary>
    public string? Examiner { get; init; }

    /// <summary>The transducer.</summary>
    public string? Transducer { get; init; }

    /// <summary>What is known of the other limb; not recorded when blank.</summary>
    public OtherLimb OtherLimb { get; init; }

    /// <summary>Fixed points of the ligament on that day's tape.</summary>
    public IReadOnlyList<FixedPoint> FixedPoints { get; init; } = [];

    /// <summary>The length of a zone measured on the horse, cm; null when blank.</summary>
    public double? ZoneLengthCm { get; init; }

    /// <summary>What was measured; without problems.</summary>
    public required ReadingDraft Reading { get; init; }

    /// <summary>The names that columns have in the file, where they differ from the canonical ones.</summary>
    public required RowPlan Plan { get; init; }
}
