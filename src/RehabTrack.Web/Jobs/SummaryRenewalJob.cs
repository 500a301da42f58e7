using RehabTrack.Records.Start;

namespace RehabTrack.Web.Jobs;

/// <summary>After an upgrade, renews the summaries that lists show, while the pages answer already; a case's own page is always computed anew.</summary>
public sealed partial class SummaryRenewalJob(RenewSummaries renewal, ILogger<SummaryRenewalJob> log) : BackgroundService
{
    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server answers first.
        await Task.Yield();
        int renewed = await renewal.RunAsync(cancellation: stoppingToken);
        if (renewed > 0)
        {
            LogRenewed(renewed);
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "{Count} summaries were renewed for this version and these settings.")]
    private partial void LogRenewed(int count);
}
