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

    private static Trend Read(int examinations, Func<int, double> size, double? target = null) =>
        Analysed(
            Case(Enumerable.Range(0, examinations).Select(look => Exam(60 * look, SixLevels(2 * size(60 * look))))) with
            {
                TargetFraction = target,
            }
        ).Trend;
}
