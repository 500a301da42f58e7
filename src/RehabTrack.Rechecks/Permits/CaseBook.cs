namespace RehabTrack.Rechecks.Permits;

/// <summary>Which cases are open on a day, and whether they were examined.</summary>
internal sealed class CaseBook(IEnumerable<PermitEntry> entries)
{
    private readonly CaseOpened[] _opened = [.. entries.OfType<CaseOpened>()];
    private readonly CaseClosed[] _closed = [.. entries.OfType<CaseClosed>()];
    private readonly ExaminationSigned[] _examined = [.. entries.OfType<ExaminationSigned>().Where(entry => !entry.IsImported)];

    /// <summary>The cases open on a day. An opening counts from the day it was recorded at the earliest, a closing from its own.</summary>
    public IEnumerable<string> OpenOn(DateOnly day) =>
        _opened
            .Where(opened => opened.Date <= day && opened.RecordedOn <= day)
            .Where(opened => !_closed.Any(closed => closed.CaseId == opened.CaseId && closed.Date <= day && closed.Order > opened.Order))
            .Select(opened => opened.CaseId)
            .Distinct(StringComparer.Ordinal);

    /// <summary>Whether every case open on the last day has an examination signed here between two days, before this was recorded.</summary>
    public bool AreExamined(DateOnly since, DateOnly until, long before)
    {
        string[] open = [.. OpenOn(until)];
        return open.Length > 0
            && open.All(id =>
                _examined.Any(entry => entry.CaseId == id && entry.Date >= since && entry.Date <= until && entry.Order < before)
            );
    }
}
