using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Shares;
using RehabTrack.Web.Features.Concerns;
using RehabTrack.Wording;

namespace RehabTrack.Web.Jobs;

/// <summary>
/// Sends the mail about concerns, one after the other, while the pages answer; what follows a letter about the same horse closely goes together
/// in the next. When the server ends, what waits for its letter gets it at once, as long as there is time.
/// </summary>
public sealed partial class ConcernMailJob(ConcernBell bell, ConcernMail mail, TimeProvider time, ILogger<ConcernMailJob> log)
    : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(new ShareSettings().ConcernLetterMinutes);

    // A server that is told to end has five seconds in all.
    private static readonly TimeSpan LastWords = TimeSpan.FromSeconds(2);

    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        ConcernRounds rounds = new(Pause);
        try
        {
            await SendAsTheyComeAsync(rounds, stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            await SendLastAsync(rounds);
        }
    }

    private async Task SendAsTheyComeAsync(ConcernRounds rounds, CancellationToken stoppingToken)
    {
        while (true)
        {
            stoppingToken.ThrowIfCancellationRequested();
            while (bell.Rung.TryRead(out ConcernRing? ring))
            {
                if (rounds.IsNow(ring, time.GetUtcNow()))
                {
                    await SendAsync(ring, 1, stoppingToken);
                }
            }

            foreach ((ConcernRing latest, int count) in rounds.Due(time.GetUtcNow()))
            {
                await SendAsync(latest, count, stoppingToken);
            }

            await WaitAsync(rounds.Next, stoppingToken);
        }
    }

    private async Task SendLastAsync(ConcernRounds rounds)
    {
        using CancellationTokenSource end = new(LastWords);
        List<(ConcernRing Latest, int Count)> last = [];
        while (bell.Rung.TryRead(out ConcernRing? ring))
        {
            if (rounds.IsNow(ring, time.GetUtcNow()))
            {
                last.Add((ring, 1));
            }
        }

        try
        {
            foreach ((ConcernRing latest, int count) in last.Concat(rounds.Waiting()))
            {
                await SendAsync(latest, count, end.Token);
            }
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            // Those that are left stand on the start page, as all do.
        }
    }

    // Until somebody rings, or a round ends.
    private async Task WaitAsync(DateTimeOffset? next, CancellationToken stoppingToken)
    {
        TimeSpan left = next is { } end ? end - time.GetUtcNow() : Timeout.InfiniteTimeSpan;
        if (next is not null && left <= TimeSpan.Zero)
        {
            return;
        }

        using CancellationTokenSource roundEnds = new(left, time);
        using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(stoppingToken, roundEnds.Token);
        try
        {
            await bell.Rung.WaitToReadAsync(either.Token);
        }
        catch (OperationCanceledException) when (!stoppingToken.IsCancellationRequested)
        {
            // A round has ended.
        }
    }

    private async Task SendAsync(ConcernRing ring, int count, CancellationToken stoppingToken)
    {
        try
        {
            foreach (Problem trouble in await mail.SendAsync(ring.Actor, ring.LineId, count, stoppingToken))
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

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail about a concern did not go out: {Trouble}")]
    private partial void LogTrouble(string trouble);

    [LoggerMessage(Level = LogLevel.Error, Message = "Mail about a concern broke off.")]
    private partial void LogBroken(Exception broken);
}
