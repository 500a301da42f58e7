namespace RehabTrack.Rechecks.Healing;

/// <summary>How the errors of one measure hang on who measured at which examination.</summary>
/// <param name="grid">The case.</param>
/// <param name="track">The track that the measure is read on; null for one that is read on many.</param>
/// <param name="deviation">SD on the working scale of the first examination beside the second, by index.</param>
internal sealed class MeasurerErrors(CaseGrid grid, int? track, Func<int, int, double> deviation)
{
    private readonly Dictionary<(int Examination, int Reference), double> _known = [];

    public double Deviation(MeasuredPoint point, MeasuredPoint reference)
    {
        (int, int) pair = (point.Examination, reference.Examination);
        if (point.Examination == reference.Examination)
        {
            return point.StandardDeviation;
        }

        if (!_known.TryGetValue(pair, out double known))
        {
            known = deviation(point.Examination, reference.Examination);
            _known.Add(pair, known);
        }

        return known;
    }

    public bool IsNamed(MeasuredPoint point) => grid.IsMeasurerNamed(point.Examination, track);

    public bool Share(MeasuredPoint one, MeasuredPoint other) =>
        !(
            track is { } only
                ? grid.OtherMeasurer(one.Examination, only, other.Examination)
                : grid.OtherMeasurer(one.Examination, other.Examination)
        );
}
