using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// The factor c of the smallest detectable change <c>c·√2·SEM</c>, so that over all rechecks together a lesion that does not change shows
/// a "real change" with a probability of 5 %. Known standard deviations; each factor is the root of a one-dimensional integral.
/// </summary>
public static class ComparisonFactors
{
    private const double Confidence = 0.95;
    private const double Reach = 8.5;
    private const int Order = 128;

    private const double LargestProbability = 0.5;

    // A change of so few standard deviations is none, and one of so many is beyond what the integrals reach.
    private const double Negligible = 0.05;
    private const double Furthest = 8;

    private const double FinestStep = 0.005;
    private const int FewestSteps = 8;
    private const int MostSteps = 256;

    private static readonly ConcurrentDictionary<(LookFamily Family, int Rechecks, double Probability), double> Known = new();

    /// <summary>One comparison named beforehand: the two-sided 5 % point of the normal distribution, 1.96.</summary>
    public static double Single { get; } = Normal.InvCDF(0, 1, (1 + Confidence) / 2);

    /// <summary>Every recheck against the baseline (Dunnett 1955).</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static double WithBaseline(int rechecks) => Of(LookFamily.WithBaseline, rechecks, 1 - Confidence);

    /// <summary>Every examination against the one before it.</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static double Neighbouring(int rechecks) => Of(LookFamily.Neighbouring, rechecks, 1 - Confidence);

    /// <summary>The latest against the best or worst so far, or any two dates chosen (Tukey's studentised range over √2).</summary>
    /// <param name="rechecks">The number of rechecks so far, at least 1.</param>
    public static double AnyTwo(int rechecks) => Of(LookFamily.AnyTwo, rechecks, 1 - Confidence);

    /// <summary>The factor that is exceeded at any of the looks with a probability above 0 and at most .5.</summary>
    internal static double Of(LookFamily family, int rechecks, double probability)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, LargestProbability);
        if (family == LookFamily.Once)
        {
            return Normal.InvCDF(0, 1, 1 - (probability / 2));
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(rechecks, 1);
        return Known.GetOrAdd(
            (family, rechecks, probability),
            static key => Brent.FindRoot(c => Within(key.Family, key.Rechecks, c) - (1 - key.Probability), Negligible, Furthest, 1e-10)
        );
    }

    /// <summary>The chance that a factor of at least 0 is exceeded at any of the looks.</summary>
    internal static double Exceeding(LookFamily family, int rechecks, double c) =>
        family == LookFamily.Once ? 2 * Normal.CDF(0, 1, -c)
        : c >= Furthest ? 0
        : c < Negligible ? 1
        : Math.Clamp(1 - Within(family, rechecks, c), 0, 1);

    private static double Within(LookFamily family, int rechecks, double c) =>
        family switch
        {
            LookFamily.WithBaseline => AllWithinOfBaseline(c, rechecks),
            LookFamily.Neighbouring => AllNeighboursWithin(c, rechecks),
            LookFamily.AnyTwo => RangeWithin(c, rechecks),
            LookFamily.Once => 1 - (2 * Normal.CDF(0, 1, -c)),
        };

    // P(|X_i − X_0| ≤ c√2 for all i = 1 … k), given X_0 = z.
    private static double AllWithinOfBaseline(double c, int rechecks)
    {
        double width = c * Math.Sqrt(2);
        return Expectation(z => Math.Pow(Normal.CDF(0, 1, z + width) - Normal.CDF(0, 1, z - width), rechecks));
    }

    // P(max − min of k + 1 values ≤ c√2), given the largest = z.
    private static double RangeWithin(double c, int rechecks)
    {
        double width = c * Math.Sqrt(2);
        return (rechecks + 1) * Expectation(z => Math.Pow(Normal.CDF(0, 1, z) - Normal.CDF(0, 1, z - width), rechecks));
    }

    // P(|X_i − X_(i−1)| ≤ c√2 for all i): the density of X_i on that event, carried on from examination to examination. The grid's step
    // divides the width, so that its ends fall on nodes.
    private static double AllNeighboursWithin(double c, int rechecks)
    {
        double width = c * Math.Sqrt(2);
        int stepsInWidth = Math.Clamp((int)(width / FinestStep), FewestSteps, MostSteps);
        double step = width / stepsInWidth;
        int half = (int)Math.Ceiling(Reach / step);
        double[] normal = new double[(2 * half) + 1];
        for (int i = 0; i < normal.Length; i++)
        {
            normal[i] = Normal.PDF(0, 1, (i - half) * step);
        }

        double[] density = [.. normal];
        for (int recheck = 0; recheck < rechecks; recheck++)
        {
            double[] sum = Cumulative(density, step);
            for (int i = 0; i < density.Length; i++)
            {
                density[i] = normal[i] * (sum[Math.Min(i + stepsInWidth, sum.Length - 1)] - sum[Math.Max(i - stepsInWidth, 0)]);
            }
        }

        return Cumulative(density, step)[^1];
    }

    // Fourth-order running integral; the density is 0 to all digits beyond the grid.
    private static double[] Cumulative(double[] density, double step)
    {
        double At(int i) => i < 0 || i >= density.Length ? 0 : density[i];
        double[] sum = new double[density.Length];
        for (int i = 1; i < density.Length; i++)
        {
            sum[i] = sum[i - 1] + (step / 24 * ((13 * (At(i - 1) + At(i))) - At(i - 2) - At(i + 1)));
        }

        return sum;
    }

    private static double Expectation(Func<double, double> given) =>
        GaussLegendreRule.Integrate(z => Normal.PDF(0, 1, z) * given(z), -Reach, Reach, Order);
}
