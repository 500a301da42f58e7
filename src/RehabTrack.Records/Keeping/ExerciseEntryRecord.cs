namespace RehabTrack.Records.Keeping;

/// <summary>
/// One line of a horse's exercise history, from which every permit follows. Lines are only added: what was said wrongly is said again.
/// </summary>
internal sealed class ExerciseEntryRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    /// <summary>Its number among the horse's lines, from 1; two who write at once cannot both have it.</summary>
    public int Number { get; set; }

    public ExerciseEntryKind Kind { get; set; }

    /// <summary>The day it speaks of, or from which it counts.</summary>
    public DateOnly Date { get; set; }

    public DateTime RecordedAt { get; set; }

    /// <summary>The practice's calendar date of <see cref="RecordedAt"/>.</summary>
    public DateOnly RecordedOn { get; set; }

    /// <summary>Who entered it.</summary>
    public Guid EnteredById { get; set; }

    /// <summary>For whom somebody of the practice entered it, as on the telephone; null when the person entered it.</summary>
    public string? OnBehalfOf { get; set; }

    /// <summary>The line as the heart reads it.</summary>
    public required string ContentJson { get; set; }

    /// <summary>What else a person said or was shown: words, the permit of the logged day.</summary>
    public string? MoreJson { get; set; }
}
