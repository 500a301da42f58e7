namespace RehabTrack.Records.Backups;

/// <summary>The backups of this program, for those who look after them.</summary>
public sealed record BackupsView
{
    /// <summary>How they are made.</summary>
    public required BackupSettings Settings { get; init; }

    /// <summary>Those that are there, the newest first.</summary>
    public required IReadOnlyList<BackupCopy> Copies { get; init; }

    /// <summary>The last time one was made or failed since the start; null when there was none.</summary>
    public BackupAttempt? Last { get; init; }

    /// <summary>When the next is due (UTC); null when none is made by itself.</summary>
    public DateTime? NextDue { get; init; }

    /// <summary>The practice's time zone.</summary>
    public required string TimeZone { get; init; }
}
