namespace RehabTrack.Rechecks.Schedule;

/// <summary>Reads where a case stands from its due date, its booking and its examinations.</summary>
public static class RecheckBoard
{
    /// <summary>Where the case stands on a day.</summary>
    /// <param name="due">When the recheck is due, read on the same day.</param>
    /// <param name="booking">The booking; null when there is none.</param>
    /// <param name="lastSigned">The last signed examination; null when there is none.</param>
    /// <param name="draft">The latest examination that was entered and not signed; null when there is none.</param>
    /// <param name="settings">The rhythm.</param>
    /// <param name="today">The practice's calendar date.</param>
    /// <remarks>
    /// A booking never hides that a recheck is overdue: it lifts nothing, and the horse waits all the same. Once it is served by a signed
    /// examination it counts no more. A draft dated after the last signed examination waits for its signature when it is the booked
    /// examination, or, without a booking, when the due date has come.
    /// </remarks>
    public static RecheckStanding Of(
        RecheckDue due,
        RecheckBooking? booking,
        DateOnly? lastSigned,
        DateOnly? draft,
        ScheduleSettings settings,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(due);
        ArgumentNullException.ThrowIfNull(settings);
        RecheckBooking? open = booking?.IsServedBy(lastSigned, settings) == true ? null : booking;
        if (draft <= today && !(draft <= lastSigned) && (open is null ? due.DaysLeft <= 0 : open.IsServedBy(draft, settings)))
        {
            return RecheckStanding.Unsigned;
        }

        return open is not null && open.Date < today ? RecheckStanding.Missed
            : due.State == RecheckState.Overdue ? RecheckStanding.Overdue
            : open is not null ? RecheckStanding.Booked
            : due.State == RecheckState.Due ? RecheckStanding.Due
            : due.State == RecheckState.Soon ? RecheckStanding.Soon
            : lastSigned is { } done && today.DayNumber - done.DayNumber <= settings.DoneDays ? RecheckStanding.Done
            : RecheckStanding.NotDue;
    }
}
