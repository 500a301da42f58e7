using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// A straight line through points whose standard deviations are known, by least squares with weights 1/sd², about the weighted means.
/// </summary>
public readonly record struct WeightedLine
{
    private static readonly ConcurrentDictionary<double, double> Quantiles = new();

    /// <summary>The value at x = 0.</summary>
    public required double Intercept { get; init; }

    /// <summary>The slope, y units per x unit.</summary>
    public required double Slope { get; init; }

    /// <summary>Standard error of the slope if the standard deviations given are true (φ = 1).</summary>
    public required double SlopeStandardError { get; init; }

    /// <summary>Weighted sum of squared residuals.</summary>
    public required double ResidualSum { get; init; }

    /// <summary>The mean of x with the weights of the points.</summary>
    public required double MeanX { get; init; }

    /// <summary>The number of points.</summary>
    public required int Points { get; init; }

    /// <summary>Degrees of freedom of the residuals: points less two.</summary>
    public int DegreesOfFreedom => Points - 2;

    /// <summary>The line through the points.</summary>
    /// <param name="x">At least two different values.</param>
    /// <param name="y">As many values.</param>
    /// <param name="standardDeviation">As many, each above 0.</param>
    /// <exception cref="ArgumentException">The lengths differ, or all x are the same.</exception>
    public static WeightedLine Through(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> standardDeviation)
    {
        if (x.Length != y.Length || x.Length != standardDeviation.Length)
        {
            throw new ArgumentException("Every point needs x, y and its standard deviation.", nameof(y));
        }

        double weights = 0;
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double weight = 1 / (standardDeviation[i] * standardDeviation[i]);
            weights += weight;
            meanX += weight * (x[i] - meanX) / weights;
            meanY += weight * (y[i] - meanY) / weights;
        }

        double sumXx = 0;
        double sumXy = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double weight = 1 / (standardDeviation[i] * standardDeviation[i]);
            sumXx += weight * (x[i] - meanX) * (x[i] - meanX);
            sumXy += weight * (x[i] - meanX) * (y[i] - meanY);
        }

        if (!(sumXx > 0))
        {
            throw new ArgumentException("A line needs two different x.", nameof(x));
        }

        double slope = sumXy / sumXx;
        double residuals = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double residual = (y[i] - meanY - (slope * (x[i] - meanX))) / standardDeviation[i];
            residuals += residual * residual;
        }

        return new WeightedLine
        {
            Intercept = meanY - (slope * meanX),
            Slope = slope,
            SlopeStandardError = 1 / Math.Sqrt(sumXx),
            ResidualSum = residuals,
            MeanX = meanX,
            Points = x.Length,
        };
    }

    /// <summary>
    /// The 95 % interval of the slope from the moderated variance: the known standard deviations count as if seen on
    /// <paramref name="priorDegreesOfFreedom"/> degrees of freedom (Smyth 2004), so that three points give a usable interval.
    /// </summary>
    /// <param name="priorDegreesOfFreedom">d0, above 0.</param>
    public (double Lower, double Upper) ModeratedInterval(double priorDegreesOfFreedom)
    {
        double freedom = priorDegreesOfFreedom + DegreesOfFreedom;
        double phi = (priorDegreesOfFreedom + ResidualSum) / freedom;
        double quantile = Quantiles.GetOrAdd(freedom, static known => StudentT.InvCDF(0, 1, known, 0.975));
        double half = quantile * Math.Sqrt(phi) * SlopeStandardError;
        return (Slope - half, Slope + half);
    }
}
