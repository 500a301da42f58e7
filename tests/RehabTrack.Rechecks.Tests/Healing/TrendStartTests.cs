using RehabTrack.Rechecks.Healing;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>The acute phase runs from the latest injury that was known.</summary>
public sealed class TrendStartTests
{
    private static readonly TrendSettings Settings = new() { AcutePhaseDays = 14 };

    [Theory]
    [InlineData(0, null, 14)]
    [InlineData(null, 30, 44)]
    [InlineData(0, 30, 44)]
    [InlineData(30, 10, 44)]
    [InlineData(20, 20, 34)]
    [InlineData(0, 101, 14)]
    [InlineData(0, 100, 114)]
    [InlineData(null, 101, null)]
    [InlineData(null, null, null)]
    public void The_trend_starts_when_the_acute_phase_after_the_latest_injury_is_over(int? onset, int? reinjury, int? expected)
    {
        DateOnly? Day(int? day) => day is { } days ? Start.AddDays(days) : null;

        Assert.Equal(
            Day(expected),
            TrendStart.Of(Case() with { Onset = Day(onset), Reinjury = Day(reinjury) }, Settings, Start.AddDays(100))
        );
    }
}
