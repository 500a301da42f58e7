using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Reads cases with their summaries for lists.</summary>
internal static class CaseRowQueries
{
    private static readonly Func<RecordsContext, Guid[], bool, IAsyncEnumerable<CaseAndSummary>> OfHorses = EF.CompileAsyncQuery(
        (RecordsContext records, Guid[] horseIds, bool onlyOpen) =>
            from injury in records.Cases.AsNoTracking()
            join found in records.CaseSummaries.AsNoTracking() on injury.Id equals found.CaseId into summaries
            from summary in summaries.DefaultIfEmpty()
            where horseIds.Contains(injury.HorseId) && injury.ArchivedAt == null && (!onlyOpen || injury.ClosedAt == null)
            orderby injury.Onset, injury.Id
            select new CaseAndSummary(injury, summary)
    );

    /// <summary>The cases of some horses, by onset and id.</summary>
    public static async Task<ILookup<Guid, CaseRow>> OfHorsesAsync(
        RecordsSession session,
        Guid[] horseIds,
        bool onlyOpen,
        CancellationToken cancellation
    ) =>
        (await OfHorses(session.Records, horseIds, onlyOpen).ToListAsync(cancellation))
            .Select(row => Of(row.Case, row.Summary, session.Practice))
            .ToLookup(row => row.HorseId);

    public static CaseRow Of(CaseRecord injury, CaseSummaryRecord? summary, PracticeRecord practice) =>
        new()
        {
            Id = injury.Id,
            HorseId = injury.HorseId,
            Limb = injury.Limb,
            Structure = injury.Structure,
            Onset = injury.Onset,
            Label = injury.ImportLabel,
            IsOpen = injury.ClosedAt is null,
            Summary = summary is { ExaminationCount: > 0 } ? SummaryViews.Of(summary, injury.RecheckIntervalDays, practice) : null,
        };

    private sealed record CaseAndSummary(CaseRecord Case, CaseSummaryRecord? Summary);
}
