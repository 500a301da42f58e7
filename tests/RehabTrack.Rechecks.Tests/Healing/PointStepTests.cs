using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>A step of the chart, and of the owner's bars, worked by hand.</summary>
public sealed class PointStepTests
{
    private static readonly DateOnly Start = new(2026, 3, 2);

    private static SeriesPoint Point(int examination, double value, double below, double above) =>
        new()
        {
            ExaminationId = $"{examination}",
            Date = Start.AddDays(60 * examination),
            Value = value,
            Lower95 = value - below,
            Upper95 = value + above,
            Complete = true,
            InTrend = true,
            InWindow = true,
        };

    [Fact]
    public void Fewer_than_two_points_have_no_step()
    {
        Assert.Empty(PointStep.Of([]));
        Assert.Empty(PointStep.Of([Point(0, 1, 0.1, 0.1)]));
    }

    [Theory]
    // Half-bands of .3 and .4 on the sides that face each other make .5 together; one recheck has the plain factor.
    [InlineData(1.0, 0.9, 0.3, 1.49, 0.4, 0.9, true)]
    [InlineData(1.0, 0.9, 0.3, 1.51, 0.4, 0.9, false)]
    [InlineData(1.5, 0.3, 0.9, 1.01, 0.9, 0.4, true)]
    [InlineData(1.5, 0.3, 0.9, 0.99, 0.9, 0.4, false)]
    public void A_step_is_held_against_the_half_bands_that_face_each_other(
        double from,
        double fromBelow,
        double fromAbove,
        double to,
        double toBelow,
        double toAbove,
        bool isInside
    )
    {
        PointStep step = Assert.Single(PointStep.Of([Point(0, from, fromBelow, fromAbove), Point(1, to, toBelow, toAbove)]));

        Assert.Equal(isInside, step.InsideError);
        Assert.Equal(100 * (to - from) / from, step.ChangePercent!.Value, 9);
    }

    [Fact]
    public void With_every_recheck_the_factor_of_neighbours_grows()
    {
        // methods: neighbouring examinations 1.960, 2.213, 2.362 for one, two, three rechecks. .5 · 2.362 / 1.960 = .6026.
        SeriesPoint[] series = [Point(0, 1, 0.3, 0.3), Point(1, 1.6, 0.4, 0.4), Point(2, 1.6, 0.4, 0.4), Point(3, 1.6, 0.4, 0.4)];

        Assert.False(PointStep.Of(series[..2])[0].InsideError);
        Assert.True(PointStep.Of(series)[0].InsideError);
        Assert.False(PointStep.Of([Point(0, 0.995, 0.3, 0.3), .. series[1..]])[0].InsideError);
    }

    [Fact]
    public void A_step_from_nothing_has_no_share()
    {
        PointStep step = Assert.Single(PointStep.Of([Point(0, 0, 0, 0.1), Point(1, 0.4, 0.1, 0.1)]));

        Assert.Null(step.ChangePercent);
        Assert.False(step.InsideError);
        Assert.Equal(("0", "1"), (step.From.ExaminationId, step.To.ExaminationId));
    }
}
