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
            ref double factors = ref MemoryMarshal.GetReference(factor.Slice((i - 1) * columns, columns));
            ref double row = ref MemoryMarshal.GetReference(odds.Slice((i - 1) * columns * lanes, columns * lanes));
            Vector256<double> largest = SumRow(ref above, ref here, ref row, ref factors, columns, lanes, from, to);
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
            ref double factors = ref MemoryMarshal.GetReference(factor.Slice(i * columns, columns));
            ref double row = ref MemoryMarshal.GetReference(odds.Slice(i * columns * lanes, columns * lanes));
            Vector256<double> largest = SumRow(
                ref Unsafe.Add(ref below, columns * lanes),
                ref Unsafe.Add(ref here, columns * lanes),
                ref Unsafe.Add(ref row, (columns - 1) * lanes),
                ref Unsafe.Add(ref factors, columns - 1),
                columns,
                -lanes,
                from,
                to
            );
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

    /// <summary>
    /// One row of sums from the row before it, column by column in the direction of the step. A column waits for the one before it, so
    /// several lanes are carried along at once.
    /// </summary>
    /// <param name="before">The row before, at the column without a link.</param>
    /// <param name="here">Takes the row, at the same column.</param>
    /// <param name="odds">The odds of the first link.</param>
    /// <param name="factors">The factor of the first link.</param>
    /// <param name="columns">Number of links.</param>
    /// <param name="step">From one column to the next: the number of lanes, negative from the last column to the first.</param>
    /// <param name="from">First lane wanted, a multiple of four.</param>
    /// <param name="to">Lane behind the last one wanted, a multiple of four.</param>
    /// <returns>The largest sums of the last column.</returns>
    private static Vector256<double> SumRow(
        ref double before,
        ref double here,
        ref double odds,
        ref double factors,
        int columns,
        int step,
        int from,
        int to
    )
    {
        int direction = Math.Sign(step);
        Vector256<double> largest = Vector256<double>.Zero;
        int lane = from;
        for (; lane + (2 * LaneWidth) < to; lane += 3 * LaneWidth)
        {
            Vector256<double> diagonal0 = Load(ref before, lane);
            Vector256<double> diagonal1 = Load(ref before, lane + LaneWidth);
            Vector256<double> diagonal2 = Load(ref before, lane + (2 * LaneWidth));
            Vector256<double> sum0 = diagonal0;
            Vector256<double> sum1 = diagonal1;
            Vector256<double> sum2 = diagonal2;
            Store(ref here, lane, sum0);
            Store(ref here, lane + LaneWidth, sum1);
            Store(ref here, lane + (2 * LaneWidth), sum2);
            int link = lane;
            for (int j = 0; j < columns; j++)
            {
                Vector256<double> factor = Vector256.Create(Unsafe.Add(ref factors, j * direction));
                int cell = link + step;
                Vector256<double> next0 = Load(ref before, cell);
                Vector256<double> next1 = Load(ref before, cell + LaneWidth);
                Vector256<double> next2 = Load(ref before, cell + (2 * LaneWidth));
                sum0 = next0 + sum0 + (((Load(ref odds, link) * factor) - Vector256<double>.One) * diagonal0);
                sum1 = next1 + sum1 + (((Load(ref odds, link + LaneWidth) * factor) - Vector256<double>.One) * diagonal1);
                sum2 = next2 + sum2 + (((Load(ref odds, link + (2 * LaneWidth)) * factor) - Vector256<double>.One) * diagonal2);
                Store(ref here, cell, sum0);
                Store(ref here, cell + LaneWidth, sum1);
                Store(ref here, cell + (2 * LaneWidth), sum2);
                (diagonal0, diagonal1, diagonal2) = (next0, next1, next2);
                link = cell;
            }

            largest = Vector256.Max(largest, Vector256.Max(sum0, Vector256.Max(sum1, sum2)));
        }

        for (; lane < to; lane += LaneWidth)
        {
            Vector256<double> diagonal = Load(ref before, lane);
            Vector256<double> sum = diagonal;
            Store(ref here, lane, sum);
            int link = lane;
            for (int j = 0; j < columns; j++)
            {
                Vector256<double> factor = Vector256.Create(Unsafe.Add(ref factors, j * direction));
                int cell = link + step;
                Vector256<double> next = Load(ref before, cell);
                sum = next + sum + (((Load(ref odds, link) * factor) - Vector256<double>.One) * diagonal);
                Store(ref here, cell, sum);
                diagonal = next;
                link = cell;
            }

            largest = Vector256.Max(largest, sum);
        }

        return largest;
    }

    /// <summary>Multiplies every number of a row by a factor and adds a floor.</summary>
    /// <param name="row">The row, as long as the number of lanes.</param>
    /// <param name="factor">The factor.</param>
    /// <param name="floor">What is added.</param>
    public static void Scale(Span<double> row, double factor, double floor)
    {
        ref double start = ref MemoryMarshal.GetReference(row);
        for (int lane = 0; lane < row.Length; lane += LaneWidth)
        {
            Store(ref start, lane, (Load(ref start, lane) * factor) + Vector256.Create(floor));
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
    private static Vector256<double> Load(ref double start, int offset) => Vector256.LoadUnsafe(ref Unsafe.Add(ref start, offset));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(ref double start, int offset, Vector256<double> value) =>
        value.StoreUnsafe(ref Unsafe.Add(ref start, offset));
}
