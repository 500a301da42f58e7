namespace RehabTrack.Rechecks.Schedule;

/// <summary>Where a case stands on the recheck board, most urgent first.</summary>
public enum RecheckStanding
{
    /// <summary>The due date has passed, and no booked day has passed without an examination.</summary>
    Overdue,

    /// <summary>The booked day has passed and the horse was not examined.</summary>
    Missed,

    /// <summary>Examined, but the examination waits to be signed.</summary>
    Unsigned,

    /// <summary>Due today, not booked.</summary>
    Due,

    /// <summary>Due within the days of the setting, not booked.</summary>
    Soon,

    /// <summary>A day is booked, today or later, and the due date has not passed.</summary>
    Booked,

    /// <summary>Signed within the days of the setting, and the next is not due soon.</summary>
    Done,

    /// <summary>Nothing to be done yet.</summary>
    NotDue,
}
