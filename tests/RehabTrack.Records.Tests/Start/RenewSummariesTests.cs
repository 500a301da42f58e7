using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Start;

public sealed class RenewSummariesTests
{
    [Fact]
    public async Task Summaries_of_another_engine_or_missing_ones_are_renewed_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        await house
            .Get<ApplyImport>()
            .ExecuteAsync(
                house.Vet,
                new ApplyImportInput
                {
                    CommandId = Guid.NewGuid(),
                    Cases = [.. Enumerable.Range(0, 3).Select(at => Files.Healing($"C{at}", new($"Horse number {at}", null, null)))],
                }
            );
        Guid[] cases = await house.LookAsync(records =>
            records.Cases.OrderBy(injury => injury.Id).Select(injury => injury.Id).ToArrayAsync()
        );
        await house.LookAsync(records =>
            records
                .CaseSummaries.Where(summary => summary.CaseId == cases[0])
                .ExecuteUpdateAsync(set => set.SetProperty(summary => summary.EngineVersion, "of old"))
        );
        await house.LookAsync(records => records.CaseSummaries.Where(summary => summary.CaseId == cases[1]).ExecuteDeleteAsync());

        int renewed = await house.Get<RenewSummaries>().RunAsync();
        int again = await house.Get<RenewSummaries>().RunAsync();

        Assert.Equal((2, 0), (renewed, again));
        Assert.Equal(
            [CaseAnalyser.EngineVersion],
            await house.LookAsync(records => records.CaseSummaries.Select(summary => summary.EngineVersion).Distinct().ToArrayAsync())
        );
        Assert.Equal(3, await house.LookAsync(records => records.CaseSummaries.CountAsync()));
    }
}
