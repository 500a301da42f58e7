using RehabTrack.Records.Reminders;

namespace RehabTrack.Records.Keeping;

/// <summary>A reminder by mail: begun before the server is asked, settled after it answered.</summary>
internal sealed class ReminderRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public Guid PersonId { get; set; }

    public required string Mail { get; set; }

    public DateOnly DueOn { get; set; }

    public ReminderState State { get; set; }

    public Guid BegunById { get; set; }

    public DateTime BegunAt { get; set; }

    public DateTime? SettledAt { get; set; }

    /// <summary>The code of what went wrong; null when nothing did.</summary>
    public string? Trouble { get; set; }
}
