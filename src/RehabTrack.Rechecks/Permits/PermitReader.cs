namespace RehabTrack.Rechecks.Permits;

/// <summary>
/// The permit for a date: a pure function of what was signed and what happened. What was signed draws a line through the plan that no
/// other entry touches; everything else can only keep the permit below that line.
/// </summary>
public static class PermitReader
{
    /// <summary>The permit for a date.</summary>
    /// <param name="history">All that happened, as far as it is to be considered.</param>
    /// <param name="date">The practice's calendar date.</param>
    /// <param name="settings">The days it goes by; null for the defaults.</param>
    public static Permit For(PermitHistory history, DateOnly date, PermitSettings? settings = null) =>
        Over(history, date, date, settings)[0];

    /// <summary>The permits of successive dates, in one pass.</summary>
    /// <param name="history">All that happened, as far as it is to be considered.</param>
    /// <param name="from">The first date.</param>
    /// <param name="to">The last date; none when it lies before the first.</param>
    /// <param name="settings">The days it goes by; null for the defaults.</param>
    public static IReadOnlyList<Permit> Over(PermitHistory history, DateOnly from, DateOnly to, PermitSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(history);
        PermitDays days = new(history, settings ?? new PermitSettings());
        return days.Between(from, to);
    }
}
