using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>What a worksheet is read against.</summary>
public sealed record WorksheetTerms
{
    /// <summary>The practice's date.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The horse's date of birth; null when not known.</summary>
    public DateOnly? BirthDate { get; init; }

    /// <summary>The limb of the case.</summary>
    public Limb Limb { get; init; }

    /// <summary>Identity of the examination.</summary>
    public required string ExaminationId { get; init; }

    /// <summary>The date that is kept until one can be read.</summary>
    public required DateOnly KeptDate { get; init; }

    /// <summary>What is kept and not shown in the grid: a row's share or grade scale, the note of the whole.</summary>
    public ExaminationContent? Kept { get; init; }

    /// <summary>The kept values of a row; null for a new one.</summary>
    public ReadingDraft? KeptValues(string rowKey) => Kept?.Readings.FirstOrDefault(row => row.Id?.ToString() == rowKey)?.Values;
}
