using RehabTrack.Exchange.Rows;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Cases;

/// <summary>By what a reading is known within its case; names are compared without regard to case, space, hyphen and underscore.</summary>
public sealed record ReadingKey
{
    /// <summary>Date of the examination.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Name of the examination, folded; empty for none.</summary>
    public required string Examination { get; init; }

    /// <summary>The part.</summary>
    public required Part Part { get; init; }

    /// <summary>The plane.</summary>
    public required ImagePlane Plane { get; init; }

    /// <summary>The level.</summary>
    public required Level Level { get; init; }

    /// <summary>The lesion, folded; empty for none.</summary>
    public required string Lesion { get; init; }

    /// <summary>The measurer, folded; empty for none.</summary>
    public required string Measurer { get; init; }

    /// <summary>The repeat, folded; empty for none.</summary>
    public required string Repeat { get; init; }

    /// <summary>The key of a row.</summary>
    public static ReadingKey Of(SheetRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new ReadingKey
        {
            Date = row.Date,
            Examination = FoldedText.Of(row.Examination ?? ""),
            Part = row.Reading.Part!.Value,
            Plane = row.Reading.Plane,
            Level = row.Reading.Level!.Value,
            Lesion = FoldedText.Of(row.Reading.Lesion ?? ""),
            Measurer = FoldedText.Of(row.Reading.Measurer ?? ""),
            Repeat = FoldedText.Of(row.Reading.Repeat ?? ""),
        };
    }
}
