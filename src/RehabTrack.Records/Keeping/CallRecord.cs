using RehabTrack.Records.Bookings;

namespace RehabTrack.Records.Keeping;

/// <summary>A call about a recheck, as somebody noted it.</summary>
internal sealed class CallRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public CallOutcome Outcome { get; set; }

    /// <summary>Who was rung; null when not said.</summary>
    public Guid? PersonId { get; set; }

    public string? Words { get; set; }

    public Guid NotedById { get; set; }

    public DateTime NotedAt { get; set; }
}
