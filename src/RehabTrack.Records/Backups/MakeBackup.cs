using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>Makes a backup now. It writes no record: what is kept is only read.</summary>
public sealed class MakeBackup : UseCase<NoInput, BackupCopy>
{
    private readonly IBackupKeeper backups;

    /// <summary>Over the backups.</summary>
    public MakeBackup(RecordsAccess access, IBackupKeeper backups)
        : base(access)
    {
        this.backups = backups;
    }

    private protected override Right Right => Right.KeepBackups;

    private protected override Task<Outcome<BackupCopy>> RunAsync(RecordsSession session, NoInput input, CancellationToken cancellation) =>
        backups.MakeAsync(cancellation);
}
