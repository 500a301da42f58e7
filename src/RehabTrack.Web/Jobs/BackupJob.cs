using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Wording;

namespace RehabTrack.Web.Jobs;

/// <summary>Looks every minute whether a backup is due; one that was missed while the machine was off is made at once.</summary>
public sealed partial class BackupJob(IBackupKeeper backups, TimeProvider time, ILogger<BackupJob> log) : BackgroundService
{
    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server answers first.
        await Task.Yield();
        using PeriodicTimer minute = new(TimeSpan.FromMinutes(1), time);
        do
        {
            try
            {
                Tell(await backups.MakeDueAsync(stoppingToken));
            }
            catch (Exception broken) when (!stoppingToken.IsCancellationRequested)
            {
                // The next one must still be tried.
                LogBroken(broken);
            }
        } while (await minute.WaitForNextTickAsync(stoppingToken));
    }

    private void Tell(Outcome<BackupCopy>? made)
    {
        if (made is { Succeeded: true })
        {
            LogMade(made.Value.Name, made.Value.Length);
        }

        foreach (string trouble in made?.Problems.Select(problem => ProblemSentences.Of(problem)) ?? [])
        {
            LogTrouble(trouble);
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Backup written and read back: {Name}, {Length} bytes.")]
    private partial void LogMade(string name, long length);

    [LoggerMessage(Level = LogLevel.Error, Message = "No backup was made: {Trouble}")]
    private partial void LogTrouble(string trouble);

    [LoggerMessage(Level = LogLevel.Error, Message = "A backup broke off.")]
    private partial void LogBroken(Exception broken);
}
