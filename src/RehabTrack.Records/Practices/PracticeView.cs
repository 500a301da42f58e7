using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Practices;

/// <summary>The practice and its settings.</summary>
public sealed record PracticeView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Telephone; null when not given.</summary>
    public required string? Phone { get; init; }

    /// <summary>Time zone, as "Europe/Vienna".</summary>
    public required string TimeZone { get; init; }

    /// <summary>Language, as "en".</summary>
    public required string Language { get; init; }

    /// <summary>Days from a signed examination to the recheck.</summary>
    public required int RecheckIntervalDays { get; init; }

    /// <summary>Whether the interval is the table's, not the practice's own.</summary>
    public required bool IntervalIsUsual { get; init; }

    /// <summary>Whether the change against last time shows while an examination is entered.</summary>
    public required bool ShowChangeWhileEntering { get; init; }

    /// <summary>Days for which notes of access are kept; null takes the table's, and for those who do not work here.</summary>
    public required int? AccessKeptDays { get; init; }

    /// <summary>Days for which the addresses of letters and the words of calls are kept; null takes the table's, and for those who do not work here.</summary>
    public required int? ContactKeptDays { get; init; }

    /// <summary>Analysis settings; the tables' for those who do not work here.</summary>
    public required AnalysisSettings Settings { get; init; }

    /// <summary>Whether the settings are the tables', not the practice's own.</summary>
    public required bool SettingsAreUsual { get; init; }

    /// <summary>By size: where a cv comes from that the practice took from its own repeats.</summary>
    public required IReadOnlyDictionary<MeasuredSize, ErrorOrigin> ErrorOrigins { get; init; }

    /// <summary>The practice's date now.</summary>
    public required DateOnly Today { get; init; }
}
