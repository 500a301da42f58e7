using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Linking;

public sealed class AlignmentKernelTests
{
    [Fact]
    public void Sums_and_probabilities_are_those_of_all_alignments_written_out()
    {
        Random random = new(7);
        for (int trial = 0; trial < 40; trial++)
        {
            int rows = random.Next(1, 8);
            int columns = random.Next(1, 8);
            const int Lanes = 8;
            double[] odds = [.. Enumerable.Range(0, rows * columns * Lanes).Select(_ => Math.Exp((10 * random.NextDouble()) - 6))];
            double[] factor = [.. Enumerable.Range(0, rows * columns).Select(_ => random.Next(4) == 0 ? 0 : 2 * random.NextDouble())];
            double[] found = Probabilities(odds, factor, rows, columns, Lanes, out double[] sums, out int[] exponents);
            int[][] alignments = [.. Alignments.All(rows, columns)];
            double[] expected = new double[rows * columns];
            for (int lane = 0; lane < Lanes; lane++)
            {
                double total = 0;
                double[] links = new double[rows * columns];
                foreach (int[] partners in alignments)
                {
                    double weight = 1;
                    for (int i = 0; i < rows; i++)
                    {
                        weight *=
                            partners[i] < 0
                                ? 1
                                : odds[(((i * columns) + partners[i]) * Lanes) + lane] * factor[(i * columns) + partners[i]];
                    }

                    total += weight;
                    for (int i = 0; i < rows; i++)
                    {
                        if (partners[i] >= 0)
                        {
                            links[(i * columns) + partners[i]] += weight;
                        }
                    }
                }

                Assert.Equal(0, exponents[rows]);
                Assert.Equal(1, sums[(((rows * (columns + 1)) + columns) * Lanes) + lane] / total, 12);
                for (int cell = 0; cell < links.Length; cell++)
                {
                    expected[cell] += links[cell] / total / Lanes;
                }
            }

            for (int cell = 0; cell < expected.Length; cell++)
            {
                Assert.Equal(expected[cell], found[cell], 12);
            }
        }
    }

    [Fact]
    public void Sums_too_large_for_a_number_are_scaled_and_change_no_probability()
    {
        const int Size = 60;
        const int Lanes = 4;
        double[] odds = new double[Size * Size * Lanes];
        for (int i = 0; i < Size; i++)
        {
            odds.AsSpan(((i * Size) + i) * Lanes, Lanes).Fill(1e9);
        }

        double[] factor = [.. Enumerable.Repeat(1.0, Size * Size)];
        double[] found = Probabilities(odds, factor, Size, Size, Lanes, out _, out int[] exponents);
        Assert.True(exponents[Size] > 0);
        for (int i = 0; i < Size; i++)
        {
            Assert.Equal(1e9 / (1 + 1e9), found[(i * Size) + i], 12);
        }
    }

    private static double[] Probabilities(
        double[] odds,
        double[] factor,
        int rows,
        int columns,
        int lanes,
        out double[] sums,
        out int[] exponents
    )
    {
        sums = new double[(rows + 1) * (columns + 1) * lanes];
        exponents = new int[rows + 1];
        double[] backward = new double[sums.Length];
        int[] backwardExponents = new int[rows + 1];
        double[] found = new double[rows * columns];
        double[] weights = [.. Enumerable.Repeat(1.0 / lanes, lanes)];
        AlignmentKernel.Forward(odds, factor, rows, columns, lanes, 0, lanes, sums, exponents);
        AlignmentKernel.Backward(odds, factor, rows, columns, lanes, 0, lanes, backward, backwardExponents);
        AlignmentKernel.AddProbabilities(
            odds,
            factor,
            rows,
            columns,
            lanes,
            0,
            lanes,
            sums,
            exponents,
            backward,
            backwardExponents,
            weights,
            found
        );
        return found;
    }
}
