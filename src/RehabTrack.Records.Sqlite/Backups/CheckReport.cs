using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.History;

namespace RehabTrack.Records.Sqlite.Backups;

/// <summary>What was found when a data folder or a backup was read from end to end.</summary>
public sealed record CheckReport
{
    /// <summary>What was read: the folder or the file.</summary>
    public required string Place { get; init; }

    /// <summary>The last migration of its database; null when it could not be read.</summary>
    public string? Migration { get; init; }

    /// <summary>Whether it is of an older version, and a copy of it was migrated in order to be read.</summary>
    public bool WasOlder { get; init; }

    /// <summary>Rows by table, as they lie there.</summary>
    public IReadOnlyDictionary<string, long> Tables { get; init; } = new Dictionary<string, long>(StringComparer.Ordinal);

    /// <summary>Rows that were read through the program's own eyes.</summary>
    public long RowsRead { get; init; }

    /// <summary>Files whose checksum was reckoned anew; none for a folder, whose files have none.</summary>
    public int FilesRead { get; init; }

    /// <summary>The last line of each practice's trail that fits.</summary>
    public IReadOnlyDictionary<Guid, TrailAnchor> TrailEnds { get; init; } = new Dictionary<Guid, TrailAnchor>();

    /// <summary>Everything that is wrong; empty when it is sound.</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }
}
