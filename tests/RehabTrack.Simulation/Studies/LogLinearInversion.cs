using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Simulation.Studies;

/// <summary>
/// The plain way to a day: a straight line through log sizes, read backwards at the target, with the interval of Fieller (1954; from memory).
/// The projection is measured against it; nothing outside the study uses it.
/// </summary>
public static class LogLinearInversion
{
    /// <summary>The day on which the line meets a target.</summary>
    /// <param name="days">At least three, not all the same.</param>
    /// <param name="logSizes">As many natural logarithms of sizes.</param>
    /// <param name="logTarget">The natural logarithm of the target.</param>
    /// <param name="held">The share of such intervals that hold the true day, above 0 and below 1.</param>
    /// <returns>The day and its interval; the interval is null where the slope cannot be told from none (g at least 1): no end can be given.</returns>
    public static (double Day, (double Lower, double Upper)? Interval) Day(double[] days, double[] logSizes, double logTarget, double held)
    {
        double[] alike = [.. days.Select(_ => 1.0)];
        WeightedLine line = WeightedLine.Through(days, logSizes, alike);
        double day = (logTarget - line.Intercept) / line.Slope;
        double quantile = StudentT.InvCDF(0, 1, line.DegreesOfFreedom, (1 + held) / 2);
        double variance = line.ResidualSum / line.DegreesOfFreedom;
        double slopeVariance = variance * line.SlopeStandardError * line.SlopeStandardError;
        double g = quantile * quantile * slopeVariance / (line.Slope * line.Slope);
        if (g >= 1)
        {
            return (day, null);
        }

        double from = day - line.MeanX;
        double half =
            quantile / Math.Abs(line.Slope) * Math.Sqrt((variance * (1 - g) / line.Points) + (slopeVariance * from * from)) / (1 - g);
        double middle = line.MeanX + (from / (1 - g));
        return (day, (middle - half, middle + half));
    }
}
