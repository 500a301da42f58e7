namespace RehabTrack.Records.Keeping;

/// <summary>A reported concern, as the practice works through it. That it drops the permit is told by the line of the exercise history.</summary>
internal sealed class ConcernRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    /// <summary>The line that opened it: a concern, or a day's log with a sign.</summary>
    public Guid EntryId { get; set; }

    public DateOnly Date { get; set; }

    public DateTime OpenedAt { get; set; }

    public Guid? SeenById { get; set; }

    public DateTime? SeenAt { get; set; }
}
