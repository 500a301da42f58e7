namespace RehabTrack.Exchange.Rows;

/// <summary>In which order a date is written.</summary>
public enum DateOrder
{
    /// <summary>2026-03-10, the only order of the canonical sheet.</summary>
    Iso,

    /// <summary>10.3.2026, 10/03/2026, 10 Mar 2026.</summary>
    DayMonthYear,

    /// <summary>3/10/2026, Mar 10 2026.</summary>
    MonthDayYear,
}
