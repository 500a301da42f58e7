using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
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
    )
    {
        List<CaseAndSummary> rows = await OfHorses(session.Records, horseIds, onlyOpen).ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, SignedRecheck> signed = await SignedRechecks.OfHorsesAsync(
            session,
            [.. rows.Where(row => row is { Case.ClosedAt: null, Summary: not null }).Select(row => row.Case.HorseId).Distinct()],
            cancellation
        );
        return rows.Select(row => Of(row.Case, row.Summary, session, signed)).ToLookup(row => row.HorseId);
    }

    public static CaseRow Of(
        CaseRecord injury,
        CaseSummaryRecord? summary,
        RecordsSession session,
        IReadOnlyDictionary<Guid, SignedRecheck> signed
    ) =>
        new()
        {
            Id = injury.Id,
            HorseId = injury.HorseId,
            Limb = injury.Limb,
            Structure = injury.Structure,
            Onset = injury.Onset,
            Label = injury.ImportLabel,
            IsOpen = injury.ClosedAt is null,
            Summary = summary is { ExaminationCount: > 0 }
                ? SummaryViews.Of(
                    summary,
                    injury.RecheckIntervalDays,
                    session,
                    injury.ClosedAt is null ? signed.GetValueOrDefault(injury.HorseId, SignedRecheck.None) : SignedRecheck.None
                )
                : null,
        };

    private sealed record CaseAndSummary(CaseRecord Case, CaseSummaryRecord? Summary);
}
