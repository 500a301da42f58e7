namespace RehabTrack.Records.Start;

/// <summary>Days logged alike, every so many days.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
/// <param name="EveryDays">Days from one log to the next, at least 1.</param>
/// <param name="Walk">Walk, min a day.</param>
/// <param name="Trot">Trot, min a day.</param>
/// <param name="Canter">Canter, min a day.</param>
/// <param name="RestDay">The day of the week without work; null when there is none.</param>
public sealed record DemoLogs(DateOnly From, DateOnly To, int EveryDays, int Walk, int Trot = 0, int Canter = 0, DayOfWeek? RestDay = null);
