namespace RehabTrack.Rechecks.Schedule;

/// <summary>When the next recheck is due. A pure function of the last signed examination, the rhythm, the day signed for and the day asked about.</summary>
/// <param name="DueDate">The date it is due; null when nothing was signed yet and no signed day waits.</param>
/// <param name="State">Where the day asked about stands.</param>
/// <param name="DaysLeft">Days from the day asked about to the due date, negative when it has passed; null without a due date.</param>
/// <param name="By">What set the date.</param>
public sealed record RecheckDue(DateOnly? DueDate, RecheckState State, int? DaysLeft, DueBy By = DueBy.Interval)
{
    /// <summary>No recheck is due.</summary>
    public static RecheckDue None { get; } = new(null, RecheckState.NotScheduled, null);

    /// <summary>The recheck that follows an examination: the earlier of the interval's end and the day that was signed for.</summary>
    /// <param name="lastSignedExamination">
    /// The date of the last signed examination; null when there is none. Imported history raises no reminder and is not to be given here.
    /// </param>
    /// <param name="settings">The rhythm, with the interval that counts for the case.</param>
    /// <param name="today">The practice's calendar date asked about.</param>
    /// <param name="signed">
    /// The date of the next gate of the horse's plan, or the date that a vet signed for the recheck; null without one. A date on or before
    /// the last signed examination was examined: it counts no more, whatever it still waits for.
    /// </param>
    /// <param name="isGate">Whether that date is a gate's.</param>
    public static RecheckDue Of(
        DateOnly? lastSignedExamination,
        ScheduleSettings settings,
        DateOnly today,
        DateOnly? signed = null,
        bool isGate = true
    )
    {
        ArgumentNullException.ThrowIfNull(settings);
        DateOnly? interval = lastSignedExamination is { } last ? After(last, settings.IntervalDays) : null;
        DateOnly? waiting = signed <= lastSignedExamination ? null : signed;
        bool bySignature = waiting is not null && !(waiting >= interval);
        if ((bySignature ? waiting : interval) is not { } due)
        {
            return None;
        }

        int left = due.DayNumber - today.DayNumber;
        RecheckState state =
            left < 0 ? RecheckState.Overdue
            : left == 0 ? RecheckState.Due
            : left <= settings.SoonDays ? RecheckState.Soon
            : RecheckState.NotDue;
        return new(
            due,
            state,
            left,
            !bySignature ? DueBy.Interval
                : isGate ? DueBy.Gate
                : DueBy.Signature
        );
    }

    /// <summary>A date some days later; the end of the calendar where it ends before that.</summary>
    private static DateOnly After(DateOnly date, int days) =>
        days <= DateOnly.MaxValue.DayNumber - date.DayNumber ? date.AddDays(days) : DateOnly.MaxValue;
}
