namespace RehabTrack.Benchmarks.Scenes;

/// <summary>
/// The baseline of linking: two examinations by positions only, the cheapest order-preserving alignment over a grid of shifts
/// (Needleman and Wunsch 1970), without areas, probabilities or tracks.
/// </summary>
internal static class PlainAlignment
{
    private const double TapeCm = 0.7;
    private const double ShiftCm = 0.6;
    private const double Unlinked = 2;
    private const int Steps = 20;

    /// <summary>The lowest cost over all shifts and alignments.</summary>
    public static double Cost(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        Span<double> row = stackalloc double[second.Length + 1];
        double best = double.PositiveInfinity;
        for (int step = -Steps; step <= Steps; step++)
        {
            double shift = 0.1 * step;
            for (int column = 0; column < row.Length; column++)
            {
                row[column] = Unlinked * column;
            }

            foreach (double level in first)
            {
                double diagonal = row[0];
                row[0] += Unlinked;
                for (int column = 1; column < row.Length; column++)
                {
                    double apart = (second[column - 1] - shift - level) / (TapeCm * Math.Sqrt(2));
                    double linked = diagonal + (0.5 * apart * apart);
                    diagonal = row[column];
                    row[column] = Math.Min(linked, Unlinked + Math.Min(row[column], row[column - 1]));
                }
            }

            best = Math.Min(best, row[^1] + (0.5 * shift / ShiftCm * (shift / ShiftCm)));
        }

        return best;
    }
}
