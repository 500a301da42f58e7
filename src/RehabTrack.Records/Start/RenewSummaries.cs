using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// A step of starting up: renews the summaries of cases that another version of the engine or other settings computed, or that have
/// none. Run again after being stopped, it goes on where it was.
/// </summary>
public sealed class RenewSummaries(RecordsAccess access)
{
    private const int Batch = 100;

    /// <summary>How many summaries were renewed.</summary>
    /// <param name="progress">Gets the number renewed so far.</param>
    /// <param name="cancellation">Gives up; what was renewed stays.</param>
    public async Task<int> RunAsync(IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        await using RecordsContext any = await access.OpenAsync(Guid.Empty, null, cancellation);
        PracticeRecord[] practices = await any.Practices.IgnoreQueryFilters().AsNoTracking().ToArrayAsync(cancellation);
        int renewed = 0;
        foreach (PracticeRecord practice in practices)
        {
            AnalysisSettings settings = SettingsStore.Of(practice);
            string hash = SettingsStore.Hash(SettingsStore.Write(settings));
            while (true)
            {
                DateTime now = access.Now;
                await using RecordsContext records = await access.OpenAsync(practice.Id, null, cancellation);
                Guid[] stale = await records
                    .Cases.Where(injury =>
                        injury.ArchivedAt == null
                        && !records.CaseSummaries.Any(summary =>
                            summary.CaseId == injury.Id
                            && summary.EngineVersion == CaseAnalyser.EngineVersion
                            && summary.SettingsHash == hash
                        )
                    )
                    .OrderBy(injury => injury.Id)
                    .Select(injury => injury.Id)
                    .Take(Batch)
                    .ToArrayAsync(cancellation);
                if (stale.Length == 0)
                {
                    break;
                }

                await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
                foreach (Guid caseId in stale)
                {
                    await SummaryRenewal.RenewAsync(
                        records,
                        caseId,
                        settings,
                        now,
                        PracticeTime.DateOf(now, practice.TimeZone),
                        cancellation
                    );
                }

                await records.SaveChangesAsync(cancellation);
                await transaction.CommitAsync(cancellation);
                renewed += stale.Length;
                progress?.Report(renewed);
            }
        }

        return renewed;
    }
}
