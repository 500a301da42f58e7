using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>Holds the log against the permits.</summary>
public static class AdherenceReader
{
    /// <summary>The weeks from one day to another, Monday to Sunday; the first and last may be cut short.</summary>
    /// <param name="logs">The logs; several of one day add up.</param>
    /// <param name="permits">By day what was permitted, as it was shown then. A day without an entry has no permit known.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day; none when it lies before the first.</param>
    /// <param name="settings">What counts as under; null for the defaults.</param>
    public static IReadOnlyList<WeekAdherence> ByWeek(
        IEnumerable<DayLog> logs,
        IReadOnlyDictionary<DateOnly, Work> permits,
        DateOnly from,
        DateOnly to,
        PermitSettings? settings = null
    )
    {
        ArgumentNullException.ThrowIfNull(permits);
        int share = (settings ?? new PermitSettings()).UnderPercent;
        ILookup<DateOnly, DayLog> byDay = logs.ToLookup(log => log.Date);
        return
        [
            .. Enumerable
                .Range(0, Math.Max(0, to.DayNumber - from.DayNumber + 1))
                .Select(from.AddDays)
                .GroupBy(MondayOf)
                .Select(week => Week([.. week], byDay, permits, share)),
        ];
    }

    /// <summary>
    /// What was permitted on each day, for <see cref="ByWeek" />: as a log kept it from the page of its day, and where nothing was kept as the
    /// history says now. Days before anything was signed have no entry.
    /// </summary>
    /// <param name="history">All that happened.</param>
    /// <param name="shown">By day what the page showed when the day was logged; later words do not change it.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day; none when it lies before the first.</param>
    public static IReadOnlyDictionary<DateOnly, Work> Permitted(
        PermitHistory history,
        IEnumerable<KeyValuePair<DateOnly, Work>> shown,
        DateOnly from,
        DateOnly to
    )
    {
        ArgumentNullException.ThrowIfNull(shown);
        Dictionary<DateOnly, Work> permitted = PermitReader
            .Over(history, from, to)
            .Where(permit => permit.State != PermitState.NothingSigned)
            .ToDictionary(permit => permit.Date, permit => permit.Work);
        foreach ((DateOnly date, Work work) in shown)
        {
            permitted[date] = work;
        }

        return permitted;
    }

    /// <summary>One day.</summary>
    /// <param name="date">The day.</param>
    /// <param name="logs">Its logs; none is no log.</param>
    /// <param name="permit">What was permitted; null when no permit is known.</param>
    /// <param name="settings">What counts as under; null for the defaults.</param>
    public static DayAdherence Of(DateOnly date, IReadOnlyList<DayLog> logs, Work? permit, PermitSettings? settings = null) =>
        Day(date, logs, permit, (settings ?? new PermitSettings()).UnderPercent);

    private static DateOnly MondayOf(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    private static DayAdherence Day(DateOnly date, IReadOnlyList<DayLog> logs, Work? permit, int share)
    {
        ArgumentNullException.ThrowIfNull(logs);
        OutingMinutes done = logs.Aggregate(default(OutingMinutes), (sum, log) => sum + log.Done);
        OutingMinutes permitted = permit?.Day ?? done;
        OutingMinutes beyond = new(
            Math.Max(0, done.Walk - permitted.Walk),
            Math.Max(0, done.Trot - permitted.Trot),
            Math.Max(0, done.Canter - permitted.Canter),
            Math.Max(0, done.Gallop - permitted.Gallop)
        );
        OverKind[] over = permit is null ? [] : [.. Overs(logs, permit, beyond)];
        return new()
        {
            Date = date,
            Standing =
                logs.Count == 0 ? AdherenceStanding.NoLog
                : permit is null ? AdherenceStanding.NoPermit
                : over.Length > 0 ? AdherenceStanding.Over
                : IsUnder(done.Total, permitted.Total, share) ? AdherenceStanding.Under
                : AdherenceStanding.Within,
            Done = done,
            Permitted = permit?.Day,
            Beyond = beyond,
            Over = over,
        };
    }

    private static IEnumerable<OverKind> Overs(IReadOnlyList<DayLog> logs, Work permit, OutingMinutes beyond)
    {
        if (beyond.Total > 0)
        {
            yield return OverKind.Minutes;
        }

        if (logs.Where(log => log.Done.Total > 0).Sum(log => log.Outings ?? 1) > permit.OutingsADay)
        {
            yield return OverKind.Outings;
        }

        if (logs.Any(log => log.Done.Total > 0 && (log.Modes & ~permit.Modes) != WorkModes.None))
        {
            yield return OverKind.Mode;
        }

        if (logs.Any(log => log.Done.Total > 0 && log.Circles > permit.Circles))
        {
            yield return OverKind.Circles;
        }

        if (logs.Any(log => log.Done.Total > 0 && (log.Surfaces & ~permit.Surfaces) != Surfaces.None))
        {
            yield return OverKind.Surface;
        }

        if (logs.Any(log => log.Turnout > permit.Turnout))
        {
            yield return OverKind.Turnout;
        }
    }

    private static WeekAdherence Week(
        DateOnly[] dates,
        ILookup<DateOnly, DayLog> logs,
        IReadOnlyDictionary<DateOnly, Work> permits,
        int share
    )
    {
        DayAdherence[] days = [.. dates.Select(date => Day(date, [.. logs[date]], permits.GetValueOrDefault(date), share))];
        Work[] known = [.. dates.Where(permits.ContainsKey).Select(date => permits[date])];
        int daysAWeek = known.Select(work => work.DaysAWeek).DefaultIfEmpty().Max();
        if (known.Length == dates.Length)
        {
            days = [.. days.Select((day, index) => IsDayTooMany(days, index, daysAWeek) ? WithDayTooMany(day) : day)];
        }

        int worked = days.Count(day => day.Done.Total > 0);
        OutingMinutes done = days.Aggregate(default(OutingMinutes), (sum, day) => sum + day.Done);
        int permitted = known.Select(work => work.Day.Total).OrderDescending().Take(daysAWeek).Sum();
        OverKind[] over = [.. days.SelectMany(day => day.Over).Distinct().Order()];
        return new()
        {
            From = dates[0],
            Standing =
                days.All(day => day.Standing == AdherenceStanding.NoLog) ? AdherenceStanding.NoLog
                : over.Length > 0 ? AdherenceStanding.Over
                : known.Length == 0 ? AdherenceStanding.NoPermit
                : IsUnder(done.Total, permitted, share) ? AdherenceStanding.Under
                : AdherenceStanding.Within,
            Days = days,
            Done = done,
            PermittedMinutes = permitted,
            DaysWorked = worked,
            Over = over,
        };
    }

    /// <summary>Whether something was done on a day after as many days of the week as were permitted.</summary>
    private static bool IsDayTooMany(DayAdherence[] days, int index, int daysAWeek) =>
        days[index].Done.Total > 0 && days.Take(index).Count(day => day.Done.Total > 0) >= daysAWeek;

    private static DayAdherence WithDayTooMany(DayAdherence day) =>
        day with
        {
            Standing = AdherenceStanding.Over,
            Over = [.. day.Over.Append(OverKind.Days).Order()],
        };

    private static bool IsUnder(int done, int permitted, int share) => 100L * done < (long)share * permitted;
}
