namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>One file of a backup, as its manifest lists it.</summary>
/// <param name="Path">Its place in the data folder, with forward slashes.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Sha256">SHA-256 of its bytes, hexadecimal.</param>
public sealed record BackupFile(string Path, long Length, string Sha256);
