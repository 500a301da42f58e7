namespace RehabTrack.Rechecks.Healing;

/// <summary>A fitted slope on the log scale with its moderated interval.</summary>
public sealed record SlopeFigures
{
    /// <summary>Slope, log per 60 days.</summary>
    public required double LogPer60Days { get; init; }

    /// <summary>Standard error with the known SDs (φ = 1), log per 60 days: what decides.</summary>
    public required double StandardError { get; init; }

    /// <summary>Lower end of the moderated 95 % interval, log per 60 days.</summary>
    public required double Lower95Log { get; init; }

    /// <summary>Upper end of the moderated 95 % interval, log per 60 days.</summary>
    public required double Upper95Log { get; init; }

    /// <summary>The number of examinations behind it.</summary>
    public required int Examinations { get; init; }

    /// <summary>First date used.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Last date used.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Rate, % per 60 days; negative is shrinking.</summary>
    public double RatePercent => ToPercent(LogPer60Days);

    /// <summary>Lower end of the interval, % per 60 days.</summary>
    public double Lower95Percent => ToPercent(Lower95Log);

    /// <summary>Upper end of the interval, % per 60 days.</summary>
    public double Upper95Percent => ToPercent(Upper95Log);

    /// <summary>A rate on the log scale as the % by which a size changes in the same time.</summary>
    /// <param name="log">The rate, natural logarithm.</param>
    public static double ToPercent(double log) => 100 * (Math.Exp(log) - 1);
}
