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

    /// <summary>
    /// The latest day on which less was permitted, in some component, than on the day before; null when there was none. A day on which
    /// the horse rests because the days or minutes of the week are done is none.
    /// </summary>
    /// <param name="history">All that happened, as far as it is to be considered.</param>
    /// <param name="date">The practice's calendar date asked about.</param>
    /// <param name="settings">The days it goes by; null for the defaults. A drop older than <see cref="PermitSettings.DropDays"/> is past.</param>
    public static DateOnly? LastDrop(PermitHistory history, DateOnly date, PermitSettings? settings = null)
    {
        settings ??= new PermitSettings();
        IReadOnlyList<Permit> permits = Over(history, date.AddDays(-settings.DropDays - 1), date, settings);
        return permits.Zip(permits.Skip(1)).LastOrDefault(days => !days.First.BeforeWeek.IsWithin(days.Second.BeforeWeek)).Second?.Date;
    }

    /// <summary>
    /// The next recheck that the signatures ask for. It reads signatures, cases and signed examinations; logs, concerns and whatever else
    /// was not signed move no recheck and may be left out of the history.
    /// </summary>
    /// <param name="history">What was signed.</param>
    /// <param name="date">The practice's calendar date.</param>
    /// <param name="settings">The days it goes by; null for the defaults.</param>
    /// <returns><see cref="SignedRecheck.None"/> without a plan in force.</returns>
    public static SignedRecheck RecheckOn(PermitHistory history, DateOnly date, PermitSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(history);
        SignedLine line = new(history.Entries, settings ?? new PermitSettings());
        DateOnly start = history
            .Entries.Where(entry => entry is PlanSigned or DecisionSigned)
            .Select(entry => entry.RecordedOn)
            .Append(date)
            .Min();
        for (DateOnly day = start; day <= date; day = day.AddDays(1))
        {
            line.GoTo(day);
            line.Sign(day, _ => { }, () => { });
        }

        return line.IsAlive ? new SignedRecheck(line.Due, line.IsGateDue, line.IntervalDays) : SignedRecheck.None;
    }
}
