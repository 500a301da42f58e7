using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>The day of the target. The shape and its prior stand in docs/methods/healing.md; days are worked out by hand.</summary>
public sealed class ProjectionTests
{
    /// <summary>
    /// A half-life of 90 days towards 4 % of the start, the middle of the prior, reaches a tenth after 90·log2(.96/.06) = 360 days.
    /// </summary>
    [Fact]
    public void A_course_that_halves_in_90_days_is_projected_around_the_day_on_which_a_tenth_is_left()
    {
        Projection projection = Read(5, day => 0.04 + (0.96 * Math.Pow(2, -day / 90.0))).Projection!;

        Assert.InRange(projection.Median!.Value.DayNumber - Start.DayNumber, 340, 380);
        Assert.True(projection.Lower90 < projection.Lower50 && projection.Lower50 < projection.Median);
        Assert.True(projection.Median < projection.Upper50);
        Assert.True(projection.Upper90 is null || projection.Upper50 < projection.Upper90);
        Assert.Equal(Start.AddDays(480), projection.Limit);
        Assert.InRange(projection.ReachedByNext, 0, 0.2);
        Assert.True(projection.ReachedByLimit > 0.9);
    }

    [Fact]
    public void What_lies_beyond_twice_the_observed_span_is_left_open()
    {
        Projection projection = Read(4, day => Math.Pow(2, -day / 140.0)).Projection!;

        Assert.Null(projection.Upper90);
        Assert.Null(projection.Upper50);
        Assert.Equal(Start.AddDays(360), projection.Limit);
        Assert.InRange(projection.ReachedByLimit, 0, 0.05);
    }

    [Fact]
    public void The_target_of_the_vet_is_the_one_that_is_projected()
    {
        Projection usual = Read(5, day => Math.Pow(2, -day / 90.0)).Projection!;
        Projection own = Read(5, day => Math.Pow(2, -day / 90.0), 0.15).Projection!;

        Assert.Equal(1.5 * usual.Target, own.Target, 9);
        Assert.True(own.Median < usual.Median);
    }

    [Fact]
    public void Nothing_is_projected_of_a_lesion_that_stalls_grows_is_at_its_target_or_was_seen_twice()
    {
        Assert.Null(Read(5, _ => 1).Projection);
        Assert.Null(Read(5, day => Math.Pow(1.3, day / 60.0)).Projection);
        Assert.Null(Read(5, day => Math.Pow(2, -day / 45.0)).Projection);
        Assert.Null(Read(2, day => Math.Pow(2, -day / 60.0)).Projection);
    }

    /// <summary>
    /// Reference: the grid written out as a sorted cloud of weighted days in plain Python (41 half-lives within 3 log SD, 9 floors, 7 starts
    /// within 2.4 SE), quantiles as the first whole day by which the share has arrived: <c>python3 projection_reference.py</c>, beside this
    /// file; values stored.
    /// </summary>
    [Fact]
    public void Days_and_shares_are_those_of_the_grid_written_out_elsewhere()
    {
        Projection projection = Projector.Project(
            Points((0, 1.0, 1.25), (60, .63, .79), (120, .41, .53), (180, .28, .37), (240, .2, .28)),
            0.1,
            60
        )!;

        Assert.Equal(
            [314, 346, 377, 415, 480],
            new[] { projection.Lower90, projection.Lower50, projection.Median, projection.Upper50, projection.Upper90 }.Select(day =>
                day!.Value.DayNumber - Start.DayNumber
            )
        );
        Assert.Equal(0.9507438044413894, projection.ReachedByLimit, 12);
        Assert.Equal(0.014811668314976068, projection.ReachedByNext, 12);
        Assert.Equal((Start.AddDays(300), Start.AddDays(480), 0.1), (projection.Next, projection.Limit, projection.Target));
    }

    /// <summary>
    /// Without an end the begin moves to where the days after it hold the share the interval is named after; without a begin there is no
    /// interval. Reference: the same script. Days, then the shares by the limit and by the next recheck.
    /// </summary>
    [Theory]
    [InlineData(new[] { 1.0, 1.25, 0.6, 0.76, 0.33, 0.43, 0.19, 0.26 }, new[] { 246, 261, 282, 312, 0 }, 0.9404513418873844, 0.06665132541)]
    [InlineData(new[] { 1.0, 1.25, 0.61, 0.77, 0.37, 0.48, 0.24, 0.32 }, new[] { 280, 328, 328, 0, 0 }, 0.72004882739345, 0.0016629242007)]
    [InlineData(new[] { 1.0, 1.25, 0.63, 0.79, 0.41, 0.53, 0.28, 0.37 }, new[] { 310, 0, 0, 0, 0 }, 0.433709007640394, 0.0000128315952)]
    [InlineData(new[] { 1.0, 1.25, 0.63, 0.79, 0.41, 0.53 }, new[] { 0, 0, 0, 0, 0 }, 0.003490270893621798, 0.00000000309070170)]
    public void An_interval_without_an_end_begins_where_its_share_of_the_days_lies_behind_it(
        double[] sizes,
        int[] days,
        double byLimit,
        double byNext
    )
    {
        Projection projection = Projector.Project(
            Points([.. sizes.Chunk(2).Select((size, look) => (60 * look, size[0], size[1]))]),
            0.1,
            60
        )!;

        Assert.Equal(
            days.Select(day => day == 0 ? (DateOnly?)null : Start.AddDays(day)),
            [projection.Lower90, projection.Lower50, projection.Median, projection.Upper50, projection.Upper90]
        );
        Assert.Equal(byLimit, projection.ReachedByLimit, 12);
        Assert.Equal(byNext, projection.ReachedByNext, 10);
    }

    [Fact]
    public void Three_sizes_of_different_days_are_needed_and_a_target_above_nothing()
    {
        MeasuredPoint[] three = Points((0, 1.0, 1.2), (60, .6, .75), (120, .4, .5));

        Assert.NotNull(Projector.Project(three, 0.1, 60));
        Assert.Null(Projector.Project(three[..2], 0.1, 60));
        Assert.Null(Projector.Project(three, 0, 60));
        Assert.Null(Projector.Project([three[0], three[1], three[2] with { IsNotMeasurable = true }], 0.1, 60));
        Assert.Null(Projector.Project([three[0], three[1], three[2] with { Value = 0 }], 0.1, 60));
        Assert.Null(Projector.Project(Points((0, 1.0, 1.2), (0, .6, .75), (0, .4, .5)), 0.1, 60));
    }

    private static MeasuredPoint[] Points(params (int Day, double Value, double Upper)[] points) =>
        [
            .. points.Select(
                (point, index) =>
                    new MeasuredPoint
                    {
                        Examination = index,
                        ExaminationId = $"e{index}",
                        Date = Start.AddDays(point.Day),
                        Value = point.Value,
                        Y = Math.Log(point.Value),
                        StandardDeviation = 0.1,
                        Lower95 = 0,
                        Upper95 = point.Upper,
                        IsNotMeasurable = false,
                    }
            ),
        ];

    private static Trend Read(int examinations, Func<int, double> size, double? target = null) =>
        Analysed(
            Case(Enumerable.Range(0, examinations).Select(look => Exam(60 * look, SixLevels(2 * size(60 * look))))) with
            {
                TargetFraction = target,
            }
        ).Trend;
}
