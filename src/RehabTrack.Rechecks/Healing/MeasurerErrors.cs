namespace RehabTrack.Rechecks.Healing;

/// <summary>How the errors of one measure hang on who measured at which examination.</summary>
/// <param name="areOthers">Whether at one examination others measured than at another, by index.</param>
/// <param name="deviation">SD on the working scale of the first examination beside the second, by index.</param>
internal sealed class MeasurerErrors(Func<int, int, bool> areOthers, Func<int, int, double> deviation)
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

    public bool Share(MeasuredPoint one, MeasuredPoint other) => !areOthers(one.Examination, other.Examination);
}
