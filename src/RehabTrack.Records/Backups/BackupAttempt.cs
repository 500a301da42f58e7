using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Backups;

/// <summary>The last time a backup was made, or was to be made, since the program was started.</summary>
/// <param name="At">When (UTC).</param>
/// <param name="Problems">Why it failed; empty when it is there.</param>
public sealed record BackupAttempt(DateTime At, IReadOnlyList<Problem> Problems);
