using MathNet.Numerics.Distributions;

namespace RehabTrack.Rechecks.Repeats;

/// <summary>
/// How two ways of measuring agree: bias and limits of agreement (Bland and Altman 1986, Lancet i:307), with intervals from the
/// t-distribution.
/// </summary>
public sealed record Agreement
{
    /// <summary>The two-sided 5 % point of the normal distribution, as the paper rounds it.</summary>
    internal const double Limit = 1.96;

    private Agreement() { }

    /// <summary>The first measurer, or null for first against second repeats.</summary>
    public string? First { get; private init; }

    /// <summary>The second measurer, or null for first against second repeats.</summary>
    public string? Second { get; private init; }

    /// <summary>One a subject, by mean.</summary>
    public required IReadOnlyList<AgreementPoint> Points { get; init; }

    /// <summary>Mean difference, first less second, in the size's unit.</summary>
    public required double Bias { get; init; }

    /// <summary>95 % interval of the bias; infinite below two subjects is not made.</summary>
    public required (double Lower, double Upper) Bias95 { get; init; }

    /// <summary>SD of the differences, in the size's unit.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>Limits of agreement, bias ∓ 1.96·SD: between them lie about 95 % of differences.</summary>
    public required (double Lower, double Upper) Limits { get; init; }

    /// <summary>Half-width of the 95 % interval of each limit: t·√(3·SD²/n).</summary>
    public required double LimitHalfWidth { get; init; }

    /// <summary>The agreement of the points; null below two, since one difference has no spread.</summary>
    /// <param name="points">Differences, one a subject.</param>
    /// <param name="first">The first measurer, if it is one.</param>
    /// <param name="second">The second measurer, if it is one.</param>
    public static Agreement? Of(IReadOnlyList<AgreementPoint> points, string? first = null, string? second = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
        {
            return null;
        }

        int n = points.Count;
        double bias = points.Average(point => point.Difference);
        double deviation = Math.Sqrt(points.Sum(point => (point.Difference - bias) * (point.Difference - bias)) / (n - 1));
        double t = StudentT.InvCDF(0, 1, n - 1, 0.975);
        double half = t * deviation / Math.Sqrt(n);
        return new Agreement
        {
            First = first,
            Second = second,
            Points = [.. points.OrderBy(point => point.Mean).ThenBy(point => point.Subject, StringComparer.Ordinal)],
            Bias = bias,
            Bias95 = (bias - half, bias + half),
            StandardDeviation = deviation,
            Limits = (bias - (Limit * deviation), bias + (Limit * deviation)),
            LimitHalfWidth = t * Math.Sqrt(3 * deviation * deviation / n),
        };
    }
}
