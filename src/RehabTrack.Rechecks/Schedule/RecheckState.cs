namespace RehabTrack.Rechecks.Schedule;

/// <summary>Where a case stands against its next recheck.</summary>
public enum RecheckState
{
    /// <summary>Nothing was signed yet, so nothing is due.</summary>
    NotScheduled,

    /// <summary>Further away than the setting for soon.</summary>
    NotDue,

    /// <summary>Due within the days of the setting.</summary>
    Soon,

    /// <summary>Due today.</summary>
    Due,

    /// <summary>The due date has passed.</summary>
    Overdue,
}
