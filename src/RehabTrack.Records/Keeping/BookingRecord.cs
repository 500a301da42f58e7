namespace RehabTrack.Records.Keeping;

/// <summary>A booked recheck. A move changes it, a cancellation marks it: calendars know it by its id.</summary>
internal sealed class BookingRecord : KeptRecord
{
    public Guid CaseId { get; set; }

    public DateOnly Date { get; set; }

    /// <summary>The practice's wall-clock time; null when only the day is booked.</summary>
    public TimeOnly? Time { get; set; }

    public int Minutes { get; set; }

    public Guid? VetId { get; set; }

    public string? Place { get; set; }

    public string? TravelNote { get; set; }

    /// <summary>The last examination of the case when the day was booked; null when there was none.</summary>
    public DateOnly? AfterExamination { get; set; }

    /// <summary>How often it was moved or cancelled: what calendars tell newer from older by.</summary>
    public int Sequence { get; set; }

    public Guid BookedById { get; set; }

    public DateTime BookedAt { get; set; }

    public DateTime ChangedAt { get; set; }

    /// <summary>When it was cancelled; null while it stands.</summary>
    public DateTime? CancelledAt { get; set; }

    public string? CancelledReason { get; set; }
}
