using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Backups;

/// <summary>When backups are made by themselves, where, and how many are kept; defaults and sources stand in <c>shared/backups.json</c>.</summary>
public sealed record BackupSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("backups");

    /// <summary>The folder they go to; null when none is made by itself.</summary>
    public string? Folder { get; init; }

    /// <summary>The time of day, by the practice's clock.</summary>
    public TimeOnly At { get; init; } = TimeOnly.MinValue.AddMinutes(Table["atMinutes"]);

    /// <summary>The last one of this many days is kept.</summary>
    public int KeepDaily { get; init; } = (int)Table["keepDaily"];

    /// <summary>The last one of this many weeks is kept.</summary>
    public int KeepWeekly { get; init; } = (int)Table["keepWeekly"];

    /// <summary>How long after one that was asked for by hand the next is made.</summary>
    public TimeSpan ByHandPause { get; init; } = TimeSpan.FromMinutes(Table["byHandPauseMinutes"]);

    /// <summary>How long after one that failed the next is tried.</summary>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromMinutes(Table["retryMinutes"]);
}
