using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Wording;

namespace RehabTrack.Web.Jobs;

/// <summary>Sends the mail about concerns, one after the other, while the pages answer.</summary>
public sealed partial class ConcernMailJob(ConcernBell bell, ConcernMail mail, ILogger<ConcernMailJob> log) : BackgroundService
{
    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach ((Actor actor, Guid lineId) in bell.Rung.ReadAllAsync(stoppingToken))
        {
            try
            {
                foreach (Problem trouble in await mail.SendAsync(actor, lineId, stoppingToken))
                {
                    LogTrouble(ProblemSentences.Of(trouble));
                }
            }
            catch (Exception broken) when (!stoppingToken.IsCancellationRequested)
            {
                // The next concern must still get its mail; this one stands on the start page.
                LogBroken(broken);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail about a concern did not go out: {Trouble}")]
    private partial void LogTrouble(string trouble);

    [LoggerMessage(Level = LogLevel.Error, Message = "Mail about a concern broke off.")]
    private partial void LogBroken(Exception broken);
}
