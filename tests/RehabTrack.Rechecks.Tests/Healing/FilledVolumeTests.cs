using RehabTrack.Rechecks.Exams;
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

    private static IReadOnlyList<ExaminationBurden> Burdens(params Reading[][] visits) =>
        Analysed(Case(visits.Select((rows, visit) => Exam(60 * visit, rows)))).Burdens;

    private static Reading[] Rows(params (double Level, double Lesion)[] rows) => [.. rows.Select(row => Row(row.Level, 1.4, row.Lesion))];

    // .4 at 18 cm before, and .4 fell to .2 at 14 cm: .2 now. The later reading would say .1.
    [Fact]
    public void An_earlier_reading_goes_before_a_later_one()
    {
        IReadOnlyList<ExaminationBurden> burdens = Burdens(
            Rows((10, 0), (14, 0.4), (18, 0.4), (22, 0)),
            Rows((10, 0), (14, 0.2), (22, 0)),
            Rows((10, 0), (14, 0.2), (18, 0.1), (22, 0))
        );

        Assert.Equal(4 * (0.2 + 0.2), burdens[1].Volume!.Value.Value, 10);
    }

    // Not read at the first two: .1 at the third, when 14 cm had .2 and not .4, so .2 at the first.
    [Fact]
    public void Without_an_earlier_reading_the_next_that_has_an_area_serves()
    {
        IReadOnlyList<ExaminationBurden> burdens = Burdens(
            Rows((10, 0), (14, 0.4), (22, 0)),
            Rows((10, 0), (14, 0.3), (22, 0)),
            Rows((10, 0), (14, 0.2), (18, 0.1), (22, 0)),
            Rows((10, 0), (14, 0.2), (18, 0.1), (22, 0))
        );

        Assert.Equal(4 * (0.4 + 0.2), burdens[0].Volume!.Value.Value, 10);
    }

    // Nothing showed lesion then, so no common change is known; a free level stays free, as sure as when it was read.
    [Fact]
    public void A_level_that_was_free_before_the_lesion_came_is_carried_on_with_its_error()
    {
        Reading[] before = Rows((10, 0), (14, 0), (18, 0));
        ExaminationBurden missed = Burdens(before, Rows((14, 0.3), (18, 0)))[1];
        ExaminationBurden read = Burdens(before, Rows((10, 0), (14, 0.3), (18, 0)))[1];

        Assert.Equal(4 * 0.3, missed.Volume!.Value.Value, 10);
        Assert.Equal(read.VolumeStandardError!.Value.Value, missed.VolumeStandardError!.Value.Value, 10);
    }
}
