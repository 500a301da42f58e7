using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// Aligns two rows of levels by position alone: the measure that the full model is held against. A link of levels a and b at shift o
/// costs 0.5·((b − o − a)/(σ√2))², each level without partner the setting, the shift 0.5·(o/its SD)².
/// </summary>
public static class PlainAligner
{
    /// <summary>The cheapest alignment at one shift, by dynamic programming (Needleman and Wunsch 1970).</summary>
    /// <param name="first">Levels of the first row, ascending, cm.</param>
    /// <param name="second">Levels of the second row, ascending, cm.</param>
    /// <param name="shift">How much larger the second row reads, cm.</param>
    /// <param name="settings">σ, the SD of the shift and the cost of a level without partner.</param>
    public static PlainAlignment Align(ReadOnlySpan<double> first, ReadOnlySpan<double> second, Centimetres shift, LinkingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double[] costs = new double[(first.Length + 1) * (second.Length + 1)];
        FillCosts(first, second, shift.Value, settings, costs);
        return new PlainAlignment(costs[^1] + ShiftCost(shift.Value, settings), shift, Trace(first, second, shift.Value, settings, costs));
    }

    /// <summary>The cheapest alignment over the grid of shifts; the smaller shift wins a tie, then the negative one.</summary>
    /// <param name="first">Levels of the first row, ascending, cm.</param>
    /// <param name="second">Levels of the second row, ascending, cm.</param>
    /// <param name="settings">As for one shift, and the grid.</param>
    public static PlainAlignment AlignOverShifts(ReadOnlySpan<double> first, ReadOnlySpan<double> second, LinkingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double[] costs = new double[(first.Length + 1) * (second.Length + 1)];
        double best = double.PositiveInfinity;
        double bestShift = 0;
        int half = GridHalf(settings);
        for (int index = -half; index <= half; index++)
        {
            double shift = index * settings.ShiftStepCm;
            FillCosts(first, second, shift, settings, costs);
            double cost = costs[^1] + ShiftCost(shift, settings);
            if (cost < best || (cost == best && Math.Abs(shift) < Math.Abs(bestShift)))
            {
                best = cost;
                bestShift = shift;
            }
        }

        return Align(first, second, new Centimetres(bestShift), settings);
    }

    /// <summary>
    /// The probability of each link when every alignment at every shift of the grid weighs e to the power of minus its cost.
    /// </summary>
    /// <param name="first">Levels of the first row, ascending, cm.</param>
    /// <param name="second">Levels of the second row, ascending, cm.</param>
    /// <param name="settings">As for one shift, and the grid.</param>
    /// <returns>Probabilities, 0 to 1: index in the first row times the length of the second, plus index in the second.</returns>
    public static IReadOnlyList<double> LinkProbabilities(ReadOnlySpan<double> first, ReadOnlySpan<double> second, LinkingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        int shifts = (2 * GridHalf(settings)) + 1;
        int lanes = (shifts + AlignmentKernel.LaneWidth - 1) / AlignmentKernel.LaneWidth * AlignmentKernel.LaneWidth;
        int cells = first.Length * second.Length;
        double[] probabilities = new double[cells];
        if (cells == 0)
        {
            return probabilities;
        }

        double[] odds = new double[cells * lanes];
        double[] weights = new double[lanes];
        for (int lane = 0; lane < shifts; lane++)
        {
            double shift = (lane - GridHalf(settings)) * settings.ShiftStepCm;
            for (int i = 0; i < first.Length; i++)
            {
                for (int j = 0; j < second.Length; j++)
                {
                    odds[(((i * second.Length) + j) * lanes) + lane] = Math.Exp(
                        (2 * settings.UnlinkedCost) - LinkCost(first[i], second[j], shift, settings)
                    );
                }
            }
        }

        double[] factor = new double[cells];
        Array.Fill(factor, 1);
        double[] forward = new double[(first.Length + 1) * (second.Length + 1) * lanes];
        double[] backward = new double[forward.Length];
        int[] forwardExponents = new int[first.Length + 1];
        int[] backwardExponents = new int[first.Length + 1];
        AlignmentKernel.Forward(odds, factor, first.Length, second.Length, lanes, 0, lanes, forward, forwardExponents);
        AlignmentKernel.Backward(odds, factor, first.Length, second.Length, lanes, 0, lanes, backward, backwardExponents);
        ReadOnlySpan<double> totals = forward.AsSpan(forward.Length - lanes);
        double sum = 0;
        for (int lane = 0; lane < shifts; lane++)
        {
            double shift = (lane - GridHalf(settings)) * settings.ShiftStepCm;
            weights[lane] = totals[lane] * Math.Exp(-ShiftCost(shift, settings));
            sum += weights[lane];
        }

        foreach (ref double weight in weights.AsSpan())
        {
            weight /= sum;
        }

        AlignmentKernel.AddProbabilities(
            odds,
            factor,
            first.Length,
            second.Length,
            lanes,
            0,
            lanes,
            forward,
            forwardExponents,
            backward,
            backwardExponents,
            weights,
            probabilities
        );
        return probabilities;
    }

    private static void FillCosts(
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second,
        double shift,
        LinkingSettings settings,
        Span<double> costs
    )
    {
        int width = second.Length + 1;
        for (int j = 0; j < width; j++)
        {
            costs[j] = j * settings.UnlinkedCost;
        }

        for (int i = 1; i <= first.Length; i++)
        {
            costs[i * width] = i * settings.UnlinkedCost;
            for (int j = 1; j < width; j++)
            {
                costs[(i * width) + j] = Math.Min(
                    Math.Min(costs[((i - 1) * width) + j], costs[(i * width) + j - 1]) + settings.UnlinkedCost,
                    costs[((i - 1) * width) + j - 1] + LinkCost(first[i - 1], second[j - 1], shift, settings)
                );
            }
        }
    }

    private static int[] Trace(
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second,
        double shift,
        LinkingSettings settings,
        ReadOnlySpan<double> costs
    )
    {
        int width = second.Length + 1;
        int[] partners = new int[first.Length];
        Array.Fill(partners, -1);
        int i = first.Length;
        int j = second.Length;
        while (i > 0 && j > 0)
        {
            double cost = costs[(i * width) + j];
            if (cost == costs[((i - 1) * width) + j - 1] + LinkCost(first[i - 1], second[j - 1], shift, settings))
            {
                partners[--i] = --j;
            }
            else if (cost == costs[((i - 1) * width) + j] + settings.UnlinkedCost)
            {
                i--;
            }
            else
            {
                j--;
            }
        }

        return partners;
    }

    private static double LinkCost(double first, double second, double shift, LinkingSettings settings)
    {
        double away = (second - shift - first) / (settings.TapeStandardDeviationCm * Math.Sqrt(2));
        return 0.5 * away * away;
    }

    private static double ShiftCost(double shift, LinkingSettings settings)
    {
        double away = shift / settings.ShiftStandardDeviationCm;
        return 0.5 * away * away;
    }

    private static int GridHalf(LinkingSettings settings) => (int)Math.Round(settings.LargestShiftCm / settings.ShiftStepCm);
}
