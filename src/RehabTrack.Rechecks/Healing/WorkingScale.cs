namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// The scale on which a measured size is compared: <c>y = asinh(cv·x/s0)</c>. Logarithmic for large values, straight near zero, and the
/// standard deviation of y is about cv at every size, so that a slope in y reads as a rate. Zero needs no special case.
/// </summary>
/// <param name="Cv">Coefficient of variation of the size, above 0.</param>
/// <param name="Floor">The part of the SD that does not shrink with the size, in the size's unit, above 0.</param>
public readonly record struct WorkingScale(double Cv, double Floor)
{
    private const double Least = 1e-6;

    private double Steepness => Math.Max(Cv, Least) / Math.Max(Floor, Least);

    /// <summary>The size on this scale, a pure number, at least 0 for a size of at least 0.</summary>
    public double ToScale(double size) => Math.Asinh(Steepness * size);

    /// <summary>The size of a value on this scale; the inverse of <see cref="ToScale"/>.</summary>
    public double FromScale(double y) => Math.Sinh(y) / Steepness;

    /// <summary>The standard deviation on this scale of a size with the standard deviation given, to first order.</summary>
    public double StandardDeviation(double size, double standardDeviation) =>
        Steepness * standardDeviation / Math.Sqrt(1 + (Steepness * size * Steepness * size));

    /// <summary>
    /// The standard deviation on this scale of a normal size with the standard deviation given, to second order: a logarithm has a longer
    /// lower tail, and far out, where several levels are judged at once, that counts.
    /// </summary>
    public double SpreadOf(double size, double standardDeviation)
    {
        // For normal x: Var f(x) = (f1·s)² + (f2²/2 + f1·f3)·s⁴ with the derivatives f1 = k/√q, f2 = −k³x/q√q, f3 = k³(2k²x² − 1)/q²√q and
        // q = 1 + k²x².
        double first = StandardDeviation(size, standardDeviation);
        double q = 1 + (Steepness * size * Steepness * size);
        double second = ((q - 1) / (2 * q)) + (((2 * (q - 1)) - 1) / q);
        return first * Math.Sqrt(Math.Max(0, 1 + (first * first * second)));
    }

    /// <summary>The standard deviation on this scale of an error that multiplies the size, given as SD of its logarithm.</summary>
    public double OfLogError(double size, double logStandardDeviation) => StandardDeviation(size, size * logStandardDeviation);
}
