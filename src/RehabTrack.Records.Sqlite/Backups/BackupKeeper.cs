using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>The backups of one data folder.</summary>
internal sealed class BackupKeeper(DataFolder data, BackupSettings settings, IDbContextFactory<RecordsContext> factory, TimeProvider time)
    : IBackupKeeper
{
    public BackupAttempt? Last { get; private set; }

    public IReadOnlyList<BackupCopy> List() =>
        settings.Folder is { } folder && Directory.Exists(folder)
            ?
            [
                .. new DirectoryInfo(folder)
                    .EnumerateFiles()
                    .Select(file => (File: file, Name: BackupName.Read(file.Name)))
                    .Where(found => found.Name is not null)
                    .Select(found => new BackupCopy(found.File.Name, found.Name!.Value.At, found.File.Length, found.Name.Value.ByHand))
                    .OrderByDescending(copy => copy.At)
                    .ThenByDescending(copy => copy.Name, StringComparer.Ordinal),
            ]
            : [];

    public Task<Outcome<BackupCopy>> MakeAsync(CancellationToken cancellation) => MakeAsync(byHand: true, cancellation);

    public async Task<Outcome<BackupCopy>?> MakeDueAsync(CancellationToken cancellation)
    {
        if (settings.Folder is not { } folder)
        {
            return null;
        }

        string timeZone = await TimeZoneAsync(cancellation);
        DateTime now = time.GetUtcNow().UtcDateTime;
        DateTime? newest = List().FirstOrDefault(copy => !copy.ByHand)?.At;
        if (
            newest >= BackupSchedule.LastDue(now, settings.At, timeZone)
            || (Last is { Problems.Count: > 0 } failed && now - failed.At < settings.RetryAfter)
        )
        {
            return null;
        }

        Outcome<BackupCopy> made = await MakeAsync(byHand: false, cancellation);
        if (made.Succeeded)
        {
            foreach (BackupCopy old in BackupRetention.Superfluous(List(), settings, timeZone))
            {
                File.Delete(Path.Combine(folder, old.Name));
            }
        }

        return made;
    }

    private async Task<Outcome<BackupCopy>> MakeAsync(bool byHand, CancellationToken cancellation)
    {
        if (settings.Folder is not { } folder)
        {
            return BackupProblems.NoFolder;
        }

        Outcome<BackupCopy> made = await BackupWriter.WriteAsync(data.Path, folder, byHand, time, cancellation);
        Last = new BackupAttempt(time.GetUtcNow().UtcDateTime, made.Problems);
        return made;
    }

    // One program, one clock: of several practices the first one's counts.
    private async Task<string> TimeZoneAsync(CancellationToken cancellation)
    {
        await using RecordsContext records = await factory.CreateDbContextAsync(cancellation);
        return await records
                .Practices.IgnoreQueryFilters()
                .OrderBy(practice => practice.Id)
                .Select(practice => practice.TimeZone)
                .FirstOrDefaultAsync(cancellation)
            ?? TimeZoneInfo.Utc.Id;
    }
}
