namespace RehabTrack.Rechecks.Healing;

/// <summary>Kendall's S with ties, and its exact probability over all orders of the values (no normal approximation).</summary>
public sealed record Kendall
{
    private const int LongestExact = 9;

    private Kendall() { }

    /// <summary>Pairs that rise with time less pairs that fall.</summary>
    public required int S { get; init; }

    /// <summary>The share of orders with at least as large an |S|: the two-sided probability.</summary>
    public required double TwoSided { get; init; }

    /// <summary>The share of orders with an S at least as large: the one-sided probability of a rise.</summary>
    public required double Rise { get; init; }

    /// <summary>
    /// The test of a series in order of time. Series longer than nine values are judged by their last nine, which keeps the count of
    /// orders below 362 881.
    /// </summary>
    /// <param name="values">The values, in order of time; ties allowed.</param>
    public static Kendall Of(IReadOnlyList<int> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        int[] series = [.. values.Skip(Math.Max(0, values.Count - LongestExact))];
        int observed = Score(series);
        int[] order = [.. series.Order()];
        long orders = 0;
        long twoSided = 0;
        long rise = 0;
        do
        {
            int score = Score(order);
            orders++;
            twoSided += Math.Abs(score) >= Math.Abs(observed) ? 1 : 0;
            rise += score >= observed ? 1 : 0;
        } while (NextOrder(order));

        return new Kendall
        {
            S = observed,
            TwoSided = (double)twoSided / orders,
            Rise = (double)rise / orders,
        };
    }

    private static int Score(int[] values)
    {
        int score = 0;
        for (int later = 1; later < values.Length; later++)
        {
            for (int earlier = 0; earlier < later; earlier++)
            {
                score += Math.Sign(values[later] - values[earlier]);
            }
        }

        return score;
    }

    // The next distinct order in lexicographic sequence; equal values are not told apart, and every distinct order stands for as many
    // permutations as every other.
    private static bool NextOrder(int[] values)
    {
        int pivot = values.Length - 2;
        while (pivot >= 0 && values[pivot] >= values[pivot + 1])
        {
            pivot--;
        }

        if (pivot < 0)
        {
            return false;
        }

        int swap = values.Length - 1;
        while (values[swap] <= values[pivot])
        {
            swap--;
        }

        (values[pivot], values[swap]) = (values[swap], values[pivot]);
        Array.Reverse(values, pivot + 1, values.Length - pivot - 1);
        return true;
    }
}
