namespace RehabTrack.Rechecks.Healing;

/// <summary>What the successive examinations say of a lesion or a case.</summary>
public sealed record Trend
{
    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The rule that spoke.</summary>
    public required VerdictReason Reason { get; init; }

    /// <summary>The measure that speaks; null when none can.</summary>
    public required Measure? Measure { get; init; }

    /// <summary>The measure at every examination that has it, in order of date.</summary>
    public required IReadOnlyList<SeriesPoint> Series { get; init; }

    /// <summary>The last examinations, which decide; null below two.</summary>
    public required SlopeFigures? Window { get; init; }

    /// <summary>The whole course; null below two.</summary>
    public required SlopeFigures? Course { get; init; }

    /// <summary>Change from the first to the last examination of the window, %; null below two.</summary>
    public required double? ChangePercent { get; init; }

    /// <summary>The smallest detectable change for that comparison, as a rise in %; null below two.</summary>
    public required double? DetectableRisePercent { get; init; }

    /// <summary>The smallest detectable change for that comparison, as a fall in % (a negative number); null below two.</summary>
    public required double? DetectableFallPercent { get; init; }

    /// <summary>The slowest acceptable rate it was held against, log per 60 days: that of the plan's phase at the latest examination.</summary>
    public required double SlowestAcceptableLogPer60Days { get; init; }

    /// <summary>How many more examinations at the usual interval would settle it; null when settled or when it cannot be said.</summary>
    public required int? MoreExaminationsToSettle { get; init; }

    /// <summary>When the target may be reached; null where nothing honest can be said: only a lesion said to be healing is projected.</summary>
    public required Projection? Projection { get; init; }

    /// <summary>The date since when the present state holds (window start); null when nothing can be said.</summary>
    public required DateOnly? Since { get; init; }
}
