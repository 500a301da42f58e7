namespace RehabTrack.Rechecks.Schedule;

/// <summary>When the next recheck is due. A pure function of the last signed examination, the rhythm and the day asked about.</summary>
/// <param name="DueDate">The date it is due; null when nothing was signed yet.</param>
/// <param name="State">Where the day asked about stands.</param>
/// <param name="DaysLeft">Days from the day asked about to the due date, negative when it has passed; null without a due date.</param>
public sealed record RecheckDue(DateOnly? DueDate, RecheckState State, int? DaysLeft)
{
    /// <summary>The recheck that follows an examination.</summary>
    /// <param name="lastSignedExamination">
    /// The date of the last signed examination; null when there is none. Imported history raises no reminder and is not to be given here.
    /// </param>
    /// <param name="settings">The rhythm.</param>
    /// <param name="today">The practice's calendar date asked about.</param>
    public static RecheckDue Of(DateOnly? lastSignedExamination, ScheduleSettings settings, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (lastSignedExamination is not { } last)
        {
            return new(null, RecheckState.NotScheduled, null);
        }

        DateOnly due = last.AddDays(settings.IntervalDays);
        int left = due.DayNumber - today.DayNumber;
        RecheckState state =
            left < 0 ? RecheckState.Overdue
            : left == 0 ? RecheckState.Due
            : left <= settings.SoonDays ? RecheckState.Soon
            : RecheckState.NotDue;
        return new(due, state, left);
    }
}
