using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Linking;

public sealed class PlainAlignerTests
{
    private static readonly LinkingSettings Settings = new();

    // docs/methods/linking.md, the worked case that is ambiguous on purpose.
    private static readonly double[] First = [10, 12, 14, 16];
    private static readonly double[] Second = [10.9, 13.1, 16.8];

    [Fact]
    public void At_shift_zero_the_worked_case_costs_3_153_and_links_13_1_to_14()
    {
        PlainAlignment best = PlainAligner.Align(First, Second, default, Settings);
        Assert.Equal(3.153061224, best.Cost, 9);
        Assert.Equal([0, -1, 1, 2], best.Partners);
    }

    [Fact]
    public void Over_all_shifts_the_worked_case_costs_2_658_at_half_a_centimetre_and_links_13_1_to_12()
    {
        PlainAlignment best = PlainAligner.AlignOverShifts(First, Second, Settings);
        Assert.Equal(2.658446712, best.Cost, 9);
        Assert.Equal(0.5, best.Shift.Value, 12);
        Assert.Equal([0, 1, -1, 2], best.Partners);
    }

    [Fact]
    public void Summed_over_all_alignments_and_shifts_13_1_belongs_rather_to_14()
    {
        IReadOnlyList<double> probabilities = PlainAligner.LinkProbabilities(First, Second, Settings);
        Assert.Equal(0.464887, probabilities[(1 * Second.Length) + 1], 6);
        Assert.Equal(0.515142, probabilities[(2 * Second.Length) + 1], 6);
    }

    [Fact]
    public void The_cheapest_alignment_is_the_cheapest_of_all_written_out()
    {
        Random random = new(41);
        for (int trial = 0; trial < 60; trial++)
        {
            double[] first = Levels(random, random.Next(0, 8));
            double[] second = Levels(random, random.Next(0, 8));
            double shift = Math.Round((2 * random.NextDouble()) - 1, 1);
            PlainAlignment best = PlainAligner.Align(first, second, new Centimetres(shift), Settings);
            double cheapest = Alignments.All(first.Length, second.Length).Min(partners => Cost(first, second, shift, partners));
            Assert.Equal(cheapest, best.Cost, 10);
            Assert.Equal(best.Cost, Cost(first, second, shift, [.. best.Partners]), 10);
        }
    }

    [Fact]
    public void The_probabilities_are_those_of_all_alignments_written_out()
    {
        Random random = new(42);
        for (int trial = 0; trial < 6; trial++)
        {
            double[] first = Levels(random, random.Next(1, 8));
            double[] second = Levels(random, random.Next(1, 8));
            double[] expected = new double[first.Length * second.Length];
            double total = 0;
            int[][] alignments = [.. Alignments.All(first.Length, second.Length)];
            for (int step = -20; step <= 20; step++)
            {
                foreach (int[] partners in alignments)
                {
                    double weight = Math.Exp(-Cost(first, second, 0.1 * step, partners));
                    total += weight;
                    for (int i = 0; i < first.Length; i++)
                    {
                        if (partners[i] >= 0)
                        {
                            expected[(i * second.Length) + partners[i]] += weight;
                        }
                    }
                }
            }

            IReadOnlyList<double> found = PlainAligner.LinkProbabilities(first, second, Settings);
            for (int cell = 0; cell < expected.Length; cell++)
            {
                Assert.Equal(expected[cell] / total, found[cell], 10);
            }
        }
    }

    [Fact]
    public void A_row_without_levels_leaves_the_other_unlinked()
    {
        PlainAlignment best = PlainAligner.AlignOverShifts(First, [], Settings);
        Assert.Equal(4 * Settings.UnlinkedCost, best.Cost, 12);
        Assert.Equal([-1, -1, -1, -1], best.Partners);
        Assert.Equal(0, best.Shift.Value);
        Assert.Empty(PlainAligner.LinkProbabilities(First, [], Settings));
    }

    private static double[] Levels(Random random, int count) =>
        [.. Enumerable.Range(0, count).Select(_ => 8 + (12 * random.NextDouble())).Order()];

    private static double Cost(double[] first, double[] second, double shift, int[] partners)
    {
        double cost = 0.5 * Math.Pow(shift / 0.6, 2);
        int links = 0;
        for (int i = 0; i < first.Length; i++)
        {
            if (partners[i] >= 0)
            {
                links++;
                cost += 0.5 * Math.Pow((second[partners[i]] - shift - first[i]) / (0.7 * Math.Sqrt(2)), 2);
            }
        }

        return cost + (2.0 * (first.Length + second.Length - (2 * links)));
    }
}
