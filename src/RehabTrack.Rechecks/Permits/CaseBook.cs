namespace RehabTrack.Rechecks.Permits;

/// <summary>Which cases are open on a day, and whether they were examined.</summary>
internal sealed class CaseBook(IEnumerable<PermitEntry> entries)
{
    private readonly CaseOpened[] _opened = [.. entries.OfType<CaseOpened>()];
    private readonly CaseClosed[] _closed = [.. entries.OfType<CaseClosed>()];
    private readonly ExaminationSigned[] _examined = [.. entries.OfType<ExaminationSigned>().Where(entry => !entry.IsImported)];

    /// <summary>The cases open on a day. Opening and closing count from the day they were recorded at the earliest.</summary>
    /// <param name="day">The day.</param>
    /// <param name="before">Only closings recorded before this count: what a vet did not know when signing excuses nothing.</param>
    public IEnumerable<string> OpenOn(DateOnly day, long before = long.MaxValue) =>
        _opened
            .Where(opened => opened.Date <= day && opened.RecordedOn <= day)
            .Where(opened =>
                !_closed.Any(closed =>
                    closed.CaseId == opened.CaseId
                    && closed.Date <= day
                    && closed.RecordedOn <= day
                    && closed.Order > opened.Order
                    && closed.Order < before
                )
            )
            .Select(opened => opened.CaseId)
            .Distinct(StringComparer.Ordinal);

    /// <summary>
    /// Whether every case open on the last day has an examination signed here between two days, before this was recorded. A case closed
    /// later than that was open.
    /// </summary>
    public bool AreExamined(DateOnly since, DateOnly until, long before)
    {
        string[] open = [.. OpenOn(until, before)];
        return open.Length > 0
            && open.All(id =>
                _examined.Any(entry => entry.CaseId == id && entry.Date >= since && entry.Date <= until && entry.Order < before)
            );
    }

    /// <summary>
    /// Since when an open case waits for its next examination: of each case the last one signed here up to a day and before this was
    /// recorded, or that day where there is none; of these the earliest.
    /// </summary>
    public DateOnly WaitingSince(DateOnly day, long before) =>
        OpenOn(day, before)
            .Select(id =>
                _examined
                    .Where(entry => entry.CaseId == id && entry.Date <= day && entry.Order < before)
                    .Select(entry => entry.Date)
                    .DefaultIfEmpty(day)
                    .Max()
            )
            .Append(day)
            .Min();
}
