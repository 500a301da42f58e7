using System.Globalization;
using System.Text.Json;
using RehabTrack.Rechecks.Quantities;

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
    private static readonly double[][] Misread = Read();

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

    // Row: the true grade; column: the grade read.
    private static double[][] Read()
    {
        using JsonDocument document = ReferenceTable.Parse("grade-misread");
        return
        [
            .. document
                .RootElement.GetProperty("rows")
                .EnumerateArray()
                .Select(row =>
                    Enumerable
                        .Range(0, 4)
                        .Select(grade => row.GetProperty(string.Create(CultureInfo.InvariantCulture, $"read{grade}")).GetDouble())
                        .ToArray()
                ),
        ];
    }
}
