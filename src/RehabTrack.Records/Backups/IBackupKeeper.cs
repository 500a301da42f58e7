using RehabTrack.Records.Room;

namespace RehabTrack.Records.Backups;

/// <summary>Makes backups of all that is kept, and clears old ones away; the provider knows how its database is copied.</summary>
public interface IBackupKeeper
{
    /// <summary>The last time one was made or failed; null when none was due since the start.</summary>
    public BackupAttempt? Last { get; }

    /// <summary>Those that are there, the newest first.</summary>
    public IReadOnlyList<BackupCopy> List();

    /// <summary>Makes one because a person asks.</summary>
    public Task<Outcome<BackupCopy>> MakeAsync(CancellationToken cancellation);

    /// <summary>Makes one when one is due, then clears away those that need not be kept.</summary>
    /// <returns>What came of it; null when none is due.</returns>
    public Task<Outcome<BackupCopy>?> MakeDueAsync(CancellationToken cancellation);
}
