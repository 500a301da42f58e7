namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// Shifts of the examinations given the links: places of one track read one position, each with the tape's error, and shifts have their
/// prior. The positions are eliminated; what remains is one equation an examination.
/// </summary>
internal sealed class ShiftFit
{
    private readonly double[] _shift;
    private readonly double[,] _covariance;
    private readonly double[] _ownVariance;
    private readonly bool[] _read;
    private readonly double _priorVariance;

    private ShiftFit(double[] shift, double[,] covariance, double[] ownVariance, bool[] read, double priorVariance)
    {
        _shift = shift;
        _covariance = covariance;
        _ownVariance = ownVariance;
        _read = read;
        _priorVariance = priorVariance;
    }

    public static ShiftFit Of(CourseState state, LinkingSettings settings)
    {
        int count = state.Examinations.Count;
        double tape = 1 / (settings.TapeStandardDeviationCm * settings.TapeStandardDeviationCm);
        double priorVariance = settings.ShiftStandardDeviationCm * settings.ShiftStandardDeviationCm;
        double[,] matrix = new double[count, count];
        double[] right = new double[count];
        double[] ownVariance = new double[count];
        for (int e = 0; e < count; e++)
        {
            matrix[e, e] = 1 / priorVariance;
        }

        Span<double> levels = count <= 64 ? stackalloc double[count] : new double[count];
        foreach (List<TrackColumn> columns in state.Columns)
        {
            foreach (TrackColumn column in columns)
            {
                for (int e = 0; e < count; e++)
                {
                    levels[e] = column.Members[e]?.Level ?? double.NaN;
                }

                AddPlace(levels, tape, matrix, right);
            }
        }

        foreach (double[] points in state.FixedPoints)
        {
            AddPlace(points, tape, matrix, right);
        }

        for (int e = 0; e < count; e++)
        {
            ownVariance[e] = 1 / matrix[e, e];
        }

        double[,] covariance = Inverse(matrix);
        double[] shift = new double[count];
        for (int e = 0; e < count; e++)
        {
            for (int f = 0; f < count; f++)
            {
                shift[e] += covariance[e, f] * right[f];
            }
        }

        bool[] read = [.. state.Places.Select(paths => paths.Any(places => places.Length > 0))];
        return new ShiftFit(shift, covariance, ownVariance, read, priorVariance);
    }

    /// <summary>How much larger the tape of an examination reads than the common tape, cm.</summary>
    public double Shift(int examination) => _shift[examination];

    /// <summary>How much larger one tape reads than another, cm; 0 when nothing was read.</summary>
    public double Difference(int examination, int reference) => _read[examination] ? _shift[examination] - _shift[reference] : 0;

    /// <summary>The variance of that difference, cm², with what the alignment leaves open.</summary>
    /// <param name="examination">The examination.</param>
    /// <param name="reference">The other examination.</param>
    /// <param name="summed">Variance of the shift summed over all alignments, cm².</param>
    public double DifferenceVariance(int examination, int reference, double summed)
    {
        if (examination == reference)
        {
            return 0;
        }

        if (!_read[examination] || !_read[reference])
        {
            return 2 * _priorVariance;
        }

        double given =
            _covariance[examination, examination] + _covariance[reference, reference] - (2 * _covariance[examination, reference]);
        return Math.Max(0, given + Math.Max(0, summed - _ownVariance[examination]));
    }

    /// <summary>Adds one place that some examinations read: its levels, not a number where it was not read.</summary>
    private static void AddPlace(ReadOnlySpan<double> levels, double tape, double[,] matrix, double[] right)
    {
        double mean = 0;
        int count = 0;
        foreach (double level in levels)
        {
            if (!double.IsNaN(level))
            {
                mean += level;
                count++;
            }
        }

        mean /= Math.Max(1, count);
        for (int e = 0; e < levels.Length; e++)
        {
            if (double.IsNaN(levels[e]))
            {
                continue;
            }

            right[e] += tape * (levels[e] - mean);
            matrix[e, e] += tape;
            for (int other = 0; other < levels.Length; other++)
            {
                if (!double.IsNaN(levels[other]))
                {
                    matrix[e, other] -= tape / count;
                }
            }
        }
    }

    /// <summary>Inverse of a symmetric positive definite matrix, by elimination; the prior keeps every pivot above 0.</summary>
    private static double[,] Inverse(double[,] matrix)
    {
        int count = matrix.GetLength(0);
        double[,] left = (double[,])matrix.Clone();
        double[,] inverse = new double[count, count];
        for (int i = 0; i < count; i++)
        {
            inverse[i, i] = 1;
        }

        for (int pivot = 0; pivot < count; pivot++)
        {
            double scale = 1 / left[pivot, pivot];
            for (int k = 0; k < count; k++)
            {
                left[pivot, k] *= scale;
                inverse[pivot, k] *= scale;
            }

            for (int row = 0; row < count; row++)
            {
                double factor = left[row, pivot];
                if (row == pivot || factor == 0)
                {
                    continue;
                }

                for (int k = 0; k < count; k++)
                {
                    left[row, k] -= factor * left[pivot, k];
                    inverse[row, k] -= factor * inverse[pivot, k];
                }
            }
        }

        return inverse;
    }
}
