using MathNet.Numerics;
using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>Series of 6 points: weighted slope, its standard error at known SD and its moderated interval.</summary>
internal sealed class SeriesFit : IScene
{
    private const int Series = 100_000;
    private const int Points = 6;

    // One pass takes so few milliseconds that a single turn of the collector or the scheduler would be the result.
    private const int Passes = 20;
    private const double PriorDegreesOfFreedom = 6;

    public string Name => "series-fit";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        Random random = new(6);
        double[] days = [.. Enumerable.Range(0, Points).Select(point => 60.0 * point)];
        double[][] sizes = [.. Enumerable.Range(0, Series).Select(_ => days.Select(day => (-0.003 * day) + random.NextDouble()).ToArray())];
        double[][] deviations = [.. sizes.Select(_ => days.Select(_ => 0.08 + (0.04 * random.NextDouble())).ToArray())];
        double kept = 0;

        void Weigh()
        {
            for (int series = 0; series < Series; series++)
            {
                WeightedLine line = WeightedLine.Through(days, sizes[series], deviations[series]);
                kept += line.Slope / line.SlopeStandardError;
                kept += line.ModeratedInterval(PriorDegreesOfFreedom).Upper;
            }
        }

        void FitPlainly()
        {
            for (int series = 0; series < Series; series++)
            {
                kept += Fit.Line(days, sizes[series]).B;
            }
        }

        yield return await Ratio.MeasureAsync(
            "100,000 series of 6: weighted slope, standard error, moderated interval",
            "MathNet `Fit.Line` on the same series (unweighted, without any error)",
            isShort ? 7 : 25,
            Weigh,
            Passes,
            FitPlainly,
            Passes
        );
        GC.KeepAlive(kept);
    }
}
