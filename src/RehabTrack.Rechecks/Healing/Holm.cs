namespace RehabTrack.Rechecks.Healing;

/// <summary>Several levels judged at once, without finding a change by looking at enough of them (Holm 1979).</summary>
public static class Holm
{
    /// <summary>
    /// The adjusted probabilities, in the order given: each is the smallest overall error rate at which its comparison still counts.
    /// </summary>
    /// <param name="probabilities">Unadjusted two-sided probabilities, each 0 to 1; may be empty.</param>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> probabilities)
    {
        ArgumentNullException.ThrowIfNull(probabilities);
        int[] order = [.. Enumerable.Range(0, probabilities.Count).OrderBy(i => probabilities[i])];
        double[] adjusted = new double[probabilities.Count];
        double soFar = 0;
        for (int rank = 0; rank < order.Length; rank++)
        {
            soFar = Math.Max(soFar, Math.Min(1, (order.Length - rank) * probabilities[order[rank]]));
            adjusted[order[rank]] = soFar;
        }

        return adjusted;
    }
}
