using System.Data.Common;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Jobs;

/// <summary>Once a day, and at the start, lets go of words about people that were kept long enough.</summary>
public sealed partial class ForgetOldWordsJob(ForgetOldWords forget, TimeProvider time, ILogger<ForgetOldWordsJob> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromDays(1);

    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server answers first.
        await Task.Yield();
        using PeriodicTimer daily = new(Pause, time);
        do
        {
            try
            {
                int emptied = await forget.RunAsync(stoppingToken);
                if (emptied > 0)
                {
                    LogEmptied(emptied);
                }
            }
            catch (DbException busy)
            {
                LogPutOff(busy);
            }
        } while (await daily.WaitForNextTickAsync(stoppingToken));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "What was kept long enough could not be emptied; it is tried again tomorrow.")]
    private partial void LogPutOff(Exception busy);

    [LoggerMessage(Level = LogLevel.Information, Message = "{Count} lines of the trail were kept long enough and are emptied.")]
    private partial void LogEmptied(int count);
}
