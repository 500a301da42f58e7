using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Referrals;

/// <summary>The verdict that stood before the vet who signed the last examination.</summary>
public sealed record ReportVerdict
{
    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The date it spoke for.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>Who signed under it.</summary>
    public required string SignedBy { get; init; }

    /// <summary>The measure that spoke; null when none could.</summary>
    public Measure? Measure { get; init; }

    /// <summary>Change in % per 60 days; null when there was no rate.</summary>
    public double? RatePercentPer60Days { get; init; }

    /// <summary>Lower end of its 95 % interval.</summary>
    public double? Lower95Percent { get; init; }

    /// <summary>Upper end of its 95 % interval.</summary>
    public double? Upper95Percent { get; init; }

    /// <summary>Version of the engine that computed it.</summary>
    public required string EngineVersion { get; init; }
}
