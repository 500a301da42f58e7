namespace RehabTrack.Records.Backups;

/// <summary>A backup that is there.</summary>
/// <param name="Name">Its file name.</param>
/// <param name="At">When it was made (UTC).</param>
/// <param name="Length">Bytes.</param>
/// <param name="ByHand">Whether a person asked for it: such a one is never cleared away.</param>
public sealed record BackupCopy(string Name, DateTime At, long Length, bool ByHand);
