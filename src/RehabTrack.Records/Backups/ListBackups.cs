using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>Which backups there are, and how the last one went.</summary>
public sealed class ListBackups : UseCase<NoInput, BackupsView>
{
    private readonly IBackupKeeper backups;
    private readonly BackupSettings settings;

    /// <summary>Over the backups.</summary>
    public ListBackups(RecordsAccess access, IBackupKeeper backups, BackupSettings settings)
        : base(access)
    {
        this.backups = backups;
        this.settings = settings;
    }

    private protected override Right Right => Right.KeepBackups;

    private protected override Task<Outcome<BackupsView>> RunAsync(RecordsSession session, NoInput input, CancellationToken cancellation)
    {
        string timeZone = session.Practice.TimeZone;
        return Task.FromResult<Outcome<BackupsView>>(
            new BackupsView
            {
                Settings = settings,
                Copies = backups.List(),
                Last = backups.Last,
                NextDue = settings.Folder is null ? null : BackupSchedule.NextDue(session.Now, settings.At, timeZone),
                TimeZone = timeZone,
            }
        );
    }
}
