using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>Makes a backup now, and notes in the trail who asked for it. What is kept is only read.</summary>
public sealed class MakeBackup : UseCase<NoInput, BackupCopy>
{
    private static readonly TimeSpan Pause = new BackupSettings().ByHandPause;

    private readonly IBackupKeeper backups;

    /// <summary>Over the backups.</summary>
    public MakeBackup(RecordsAccess access, IBackupKeeper backups)
        : base(access)
    {
        this.backups = backups;
    }

    private protected override Right Right => Right.KeepBackups;

    private protected override async Task<Outcome<BackupCopy>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        DateTime since = session.Now - Pause;
        if (backups.List().Any(copy => copy.ByHand && copy.At > since))
        {
            return new Problem("", "backup-just-made", RecordText.Of((int)Pause.TotalMinutes));
        }

        Outcome<BackupCopy> made = await backups.MakeAsync(cancellation);
        if (made.Succeeded)
        {
            await AccessNote.WriteAsync(
                session.Records,
                new Writer(session.Person.Id, session.Now, Guid.Empty, nameof(MakeBackup)),
                AccessEvent.BackupMade,
                null,
                made.Value.Name,
                cancellation
            );
        }

        return made;
    }
}
