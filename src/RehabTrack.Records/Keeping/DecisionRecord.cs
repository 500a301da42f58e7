namespace RehabTrack.Records.Keeping;

/// <summary>What a signed decision rested on, and what was released of it. The decision itself is a line of the exercise history.</summary>
internal sealed class DecisionRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    /// <summary>The line of the exercise history.</summary>
    public Guid EntryId { get; set; }

    /// <summary>The verdicts, links, settings and examinations of the horse's open cases, the signs of the visit, and the suggestion.</summary>
    public required string GroundJson { get; set; }

    /// <summary>Why the vet decided otherwise than suggested; null when as suggested.</summary>
    public string? Disagreement { get; set; }

    /// <summary>The decision that this one corrects; null when it corrects none.</summary>
    public Guid? CorrectsId { get; set; }

    /// <summary>What owner and trainer read; null until released.</summary>
    public string? ReleaseJson { get; set; }

    public DateTime? ReleasedAt { get; set; }

    public Guid? ReleasedById { get; set; }
}
