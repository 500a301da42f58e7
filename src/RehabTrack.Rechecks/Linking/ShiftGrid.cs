namespace RehabTrack.Rechecks.Linking;

/// <summary>The grids over which the full model sums: shift of the examination and common change of the lesion.</summary>
internal sealed class ShiftGrid
{
    public ShiftGrid(LinkingSettings settings)
    {
        Shifts = Grid(settings.LargestShiftCm, settings.ShiftSumStepCm);
        Changes = Grid(settings.CommonLesionChangeLimit, settings.CommonLesionChangeStep);
        Lanes = (Shifts.Length + AlignmentKernel.LaneWidth - 1) / AlignmentKernel.LaneWidth * AlignmentKernel.LaneWidth;
        LogChangePrior = [.. Changes.Select(change => -0.5 * Square(change / settings.CommonLesionChangeStandardDeviation))];
    }

    /// <summary>Shifts looked at, cm, ascending.</summary>
    public double[] Shifts { get; }

    /// <summary>Common log changes looked at, ascending.</summary>
    public double[] Changes { get; }

    /// <summary>Log prior of each change, up to a constant.</summary>
    public double[] LogChangePrior { get; }

    /// <summary>The number of shifts, filled up to whole lanes.</summary>
    public int Lanes { get; }

    private static double[] Grid(double limit, double step)
    {
        int half = step > 0 ? (int)Math.Round(limit / step) : 0;
        return [.. Enumerable.Range(-half, (2 * half) + 1).Select(index => index * step)];
    }

    private static double Square(double value) => value * value;
}
