using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// Sums over all order-preserving alignments of two rows of levels, for many shifts at once. Each link weighs its odds, each unlinked
/// level 1; the sum obeys S(i,j) = S(i−1,j) + S(i,j−1) + (odds − 1)·S(i−1,j−1), in which the last term takes back what the first two
/// count twice. No logarithm inside: rows that grow large are scaled by a power of two.
/// </summary>
internal static class AlignmentKernel
{
    /// <summary>Lanes are handled four at a time; the number of lanes of every table is a multiple of this.</summary>
    public const int LaneWidth = 4;

    private const int ScaleExponent = 300;
    private static readonly double ScaleLimit = Math.ScaleB(1, ScaleExponent);
    private static readonly double ScaleDown = Math.ScaleB(1, -ScaleExponent);

    /// <summary>
    /// Fills the table of sums over the first i rows and j columns; cell (i, j) starts at (i·(columns + 1) + j)·lanes.
    /// </summary>
    /// <param name="odds">Odds of each link by shift: (row·columns + column)·lanes + lane.</param>
    /// <param name="factor">What multiplies the odds of each link at every shift: row·columns + column.</param>
    /// <param name="rows">Number of rows.</param>
    /// <param name="columns">Number of columns.</param>
    /// <param name="lanes">Number of lanes in the tables.</param>
    /// <param name="from">First lane wanted, a multiple of four.</param>
    /// <param name="to">Lane behind the last one wanted, a multiple of four.</param>
    /// <param name="sums">Takes the sums.</param>
    /// <param name="exponents">Takes for each row the power of two it was divided by.</param>
    public static void Forward(
        ReadOnlySpan<double> odds,
        ReadOnlySpan<double> factor,
        int rows,
        int columns,
        int lanes,
        int from,
        int to,
        Span<double> sums,
        Span<int> exponents
    )
    {
        int width = (columns + 1) * lanes;
        for (int j = 0; j <= columns; j++)
        {
            sums.Slice((j * lanes) + from, to - from).Fill(1);
        }

        exponents[0] = 0;
        for (int i = 1; i <= rows; i++)
        {
            ref double above = ref MemoryMarshal.GetReference(sums.Slice((i - 1) * width, width));
            ref double here = ref MemoryMarshal.GetReference(sums.Slice(i * width, width));
            ReadOnlySpan<double> factors = factor.Slice((i - 1) * columns, columns);
            ref double row = ref MemoryMarshal.GetReference(odds.Slice((i - 1) * columns * lanes, columns * lanes));
            Vector256<double> largest = Vector256<double>.Zero;
            for (int lane = from; lane < to; lane += LaneWidth)
            {
                Vector256<double> diagonal = Load(ref above, lane);
                Vector256<double> left = diagonal;
                Store(ref here, lane, left);
                for (int j = 0; j < columns; j++)
                {
                    Vector256<double> up = Load(ref above, ((j + 1) * lanes) + lane);
                    Vector256<double> link = (Load(ref row, (j * lanes) + lane) * factors[j]) - Vector256<double>.One;
                    left = up + left + (link * diagonal);
                    diagonal = up;
                    Store(ref here, ((j + 1) * lanes) + lane, left);
                }

                largest = Vector256.Max(largest, left);
            }

            exponents[i] = exponents[i - 1] + ScaleRow(sums.Slice(i * width, width), largest, lanes, from, to);
        }
    }

    /// <summary>As <see cref="Forward"/>, over the rows from i and the columns from j to the end.</summary>
    public static void Backward(
        ReadOnlySpan<double> odds,
        ReadOnlySpan<double> factor,
        int rows,
        int columns,
        int lanes,
        int from,
        int to,
        Span<double> sums,
        Span<int> exponents
    )
    {
        int width = (columns + 1) * lanes;
        for (int j = 0; j <= columns; j++)
        {
            sums.Slice((rows * width) + (j * lanes) + from, to - from).Fill(1);
        }

        exponents[rows] = 0;
        for (int i = rows - 1; i >= 0; i--)
        {
            ref double below = ref MemoryMarshal.GetReference(sums.Slice((i + 1) * width, width));
            ref double here = ref MemoryMarshal.GetReference(sums.Slice(i * width, width));
            ReadOnlySpan<double> factors = factor.Slice(i * columns, columns);
            ref double row = ref MemoryMarshal.GetReference(odds.Slice(i * columns * lanes, columns * lanes));
            Vector256<double> largest = Vector256<double>.Zero;
            for (int lane = from; lane < to; lane += LaneWidth)
            {
                Vector256<double> diagonal = Load(ref below, (columns * lanes) + lane);
                Vector256<double> right = diagonal;
                Store(ref here, (columns * lanes) + lane, right);
                for (int j = columns - 1; j >= 0; j--)
                {
                    Vector256<double> down = Load(ref below, (j * lanes) + lane);
                    Vector256<double> link = (Load(ref row, (j * lanes) + lane) * factors[j]) - Vector256<double>.One;
                    right = down + right + (link * diagonal);
                    diagonal = down;
                    Store(ref here, (j * lanes) + lane, right);
                }

                largest = Vector256.Max(largest, right);
            }

            exponents[i] = exponents[i + 1] + ScaleRow(sums.Slice(i * width, width), largest, lanes, from, to);
        }
    }

    /// <summary>Adds to each link its probability: the share of the sum of all alignments that holds it, weighted by lane.</summary>
    /// <param name="odds">As given to <see cref="Forward"/>.</param>
    /// <param name="factor">As given to <see cref="Forward"/>.</param>
    /// <param name="rows">Number of rows.</param>
    /// <param name="columns">Number of columns.</param>
    /// <param name="lanes">Number of lanes in the tables.</param>
    /// <param name="from">First lane wanted, a multiple of four.</param>
    /// <param name="to">Lane behind the last one wanted, a multiple of four.</param>
    /// <param name="forward">The sums of <see cref="Forward"/>.</param>
    /// <param name="forwardExponents">Their powers of two.</param>
    /// <param name="backward">The sums of <see cref="Backward"/>.</param>
    /// <param name="backwardExponents">Their powers of two.</param>
    /// <param name="weights">The weight of each lane, 0 to 1; overwritten.</param>
    /// <param name="probabilities">Takes the probabilities: row·columns + column.</param>
    public static void AddProbabilities(
        ReadOnlySpan<double> odds,
        ReadOnlySpan<double> factor,
        int rows,
        int columns,
        int lanes,
        int from,
        int to,
        ReadOnlySpan<double> forward,
        ReadOnlySpan<int> forwardExponents,
        ReadOnlySpan<double> backward,
        ReadOnlySpan<int> backwardExponents,
        Span<double> weights,
        Span<double> probabilities
    )
    {
        int width = (columns + 1) * lanes;
        ReadOnlySpan<double> total = forward.Slice((rows * width) + (columns * lanes), lanes);
        for (int lane = from; lane < to; lane++)
        {
            weights[lane] = total[lane] > 0 ? weights[lane] / total[lane] : 0;
        }

        ref double weight = ref MemoryMarshal.GetReference(weights);
        for (int i = 0; i < rows; i++)
        {
            double scale = Math.ScaleB(1, forwardExponents[i] + backwardExponents[i + 1] - forwardExponents[rows]);
            ref double before = ref MemoryMarshal.GetReference(forward.Slice(i * width, width));
            ref double after = ref MemoryMarshal.GetReference(backward.Slice((i + 1) * width, width));
            ref double row = ref MemoryMarshal.GetReference(odds.Slice(i * columns * lanes, columns * lanes));
            for (int j = 0; j < columns; j++)
            {
                double common = factor[(i * columns) + j] * scale;
                if (common == 0)
                {
                    continue;
                }

                Vector256<double> sum = Vector256<double>.Zero;
                for (int lane = from; lane < to; lane += LaneWidth)
                {
                    sum +=
                        Load(ref weight, lane)
                        * Load(ref row, (j * lanes) + lane)
                        * (Load(ref before, (j * lanes) + lane) * Load(ref after, ((j + 1) * lanes) + lane));
                }

                probabilities[(i * columns) + j] += Vector256.Sum(sum) * common;
            }
        }
    }

    private static int ScaleRow(Span<double> row, Vector256<double> largest, int lanes, int from, int to)
    {
        if (!Vector256.GreaterThanAny(largest, Vector256.Create(ScaleLimit)))
        {
            return 0;
        }

        for (int cell = 0; cell < row.Length; cell += lanes)
        {
            foreach (ref double sum in row.Slice(cell + from, to - from))
            {
                sum *= ScaleDown;
            }
        }

        return ScaleExponent;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(ref double start, int offset) => Vector256.LoadUnsafe(ref start, (nuint)offset);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double start, int offset, Vector256<double> value) => value.StoreUnsafe(ref start, (nuint)offset);
}
