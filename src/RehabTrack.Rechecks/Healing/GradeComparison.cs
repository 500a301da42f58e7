namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// What two grades 0–3 say of the true grades behind them, when a grade is sometimes read one step off: probabilities of better, same and
/// worse, with every true grade equally likely beforehand. One grade alone is not proof.
/// </summary>
/// <param name="Better">Probability that the true grade fell.</param>
/// <param name="Same">Probability that it stayed.</param>
/// <param name="Worse">Probability that it rose.</param>
public sealed record GradeComparison(double Better, double Same, double Worse)
{
    // Row: the true grade; column: the grade read (docs/methods.md, section 4).
    private static readonly double[][] Misread =
    [
        [0.8, 0.2, 0, 0],
        [0.1, 0.8, 0.1, 0],
        [0, 0.1, 0.8, 0.1],
        [0, 0, 0.2, 0.8],
    ];

    /// <summary>Compares two grades read at one place.</summary>
    /// <param name="before">The earlier grade, 0 to 3.</param>
    /// <param name="after">The later grade, 0 to 3.</param>
    public static GradeComparison Of(int before, int after)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(before);
        ArgumentOutOfRangeException.ThrowIfNegative(after);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(before, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(after, 3);
        double better = 0;
        double same = 0;
        double worse = 0;
        for (int first = 0; first < Misread.Length; first++)
        {
            for (int second = 0; second < Misread.Length; second++)
            {
                double probability = Misread[first][before] * Misread[second][after];
                better += second < first ? probability : 0;
                same += second == first ? probability : 0;
                worse += second > first ? probability : 0;
            }
        }

        double total = better + same + worse;
        return new(better / total, same / total, worse / total);
    }
}
