using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>A volume with a filled level, and how its error hangs on every reading that it is made of, against derivatives taken numerically.</summary>
public sealed class FilledVolumeTests
{
    private const int Missed = 2;
    private const double Spacing = 4;
    private static readonly double[] Source = [0, 0.2, 0.9, 0.55, 0.12, 0];
    private static readonly double[] Now = [0, 0.17, 0, 0.34, 0.11, 0];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_volume_and_its_error_are_those_of_the_formula_whether_the_level_was_read_before_or_after(bool sourceIsLater)
    {
        int missing = sourceIsLater ? 0 : 1;
        double[][] looks = sourceIsLater ? [Now, Source, Source] : [Source, Now, Source];
        ExaminationBurden burden = Analysed(
            Case(
                looks.Select(
                    (areas, look) =>
                        Exam(
                            60 * look,
                            Enumerable
                                .Range(0, areas.Length)
                                .Where(i => look != missing || i != Missed)
                                .Select(i => Row(10 + (Spacing * i), 1.4, areas[i]))
                        )
                )
            )
        ).Burdens[missing];

        double volume = Volume(Source, Now);
        double variance = Math.Pow(0.03 * volume, 2);
        for (int i = 0; i < Source.Length; i++)
        {
            variance += Math.Pow(Derivative(step => Volume(With(Source, i, step), Now)) * Sd(Source[i]), 2);
            variance += i == Missed ? 0 : Math.Pow(Derivative(step => Volume(Source, With(Now, i, step))) * Sd(Now[i]), 2);
        }

        Assert.Equal(volume, burden.Volume!.Value.Value, 9);
        Assert.Equal(Math.Sqrt(variance), burden.VolumeStandardError!.Value.Value, 7);
        Assert.False(burden.VolumeIsLowerBound);
    }

    /// <summary>Trapezoids over six levels; the missed one is its area elsewhere times the common change of the others.</summary>
    private static double Volume(double[] source, double[] now)
    {
        double change = now.Where((_, i) => i != Missed).Sum() / source.Where((_, i) => i != Missed).Sum();
        double[] areas = [.. now.Select((area, i) => i == Missed ? source[i] * change : area)];
        return areas.Zip(areas.Skip(1), (left, right) => Spacing * (left + right) / 2).Sum();
    }

    /// <summary>The error of a lesion area of shared/measurement-error.md: cv .12, s0 .02 cm².</summary>
    private static double Sd(double area) => Math.Sqrt(Math.Pow(0.12 * area, 2) + (0.02 * 0.02));

    private static double[] With(double[] areas, int index, double step) => [.. areas.Select((area, i) => i == index ? area + step : area)];

    private static double Derivative(Func<double, double> value) => (value(1e-5) - value(-1e-5)) / 2e-5;
}
