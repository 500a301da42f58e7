using RehabTrack.Simulation.Studies;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>The baseline of the projection study against the worked values of project methods, section 5 (Series S).</summary>
public sealed class LogLinearInversionTests
{
    private static readonly double[] Days = [0, 60, 120, 180, 240];

    /// <summary>Fieller to A = .1 with t on 3 degrees of freedom.</summary>
    [Fact]
    public void Series_S_reaches_a_tenth_after_642_days_with_the_interval_of_Fieller()
    {
        double[] sizes = [0.90, 0.72, 0.61, 0.47, 0.40];

        (double day, (double Lower, double Upper)? interval) = LogLinearInversion.Day(
            Days,
            [.. sizes.Select(size => Math.Log(size))],
            Math.Log(0.1),
            0.95
        );

        Assert.Equal(642.175913524827, day, 9);
        Assert.Equal(583.143976800391, interval!.Value.Lower, 9);
        Assert.Equal(717.885358794469, interval.Value.Upper, 9);
    }

    /// <summary>Never clipped: with g at least 1 there is no interval.</summary>
    [Fact]
    public void A_slope_that_cannot_be_told_from_none_has_no_interval()
    {
        double[] sizes = [0.50, 0.58, 0.44, 0.55, 0.47];

        Assert.Null(LogLinearInversion.Day(Days, [.. sizes.Select(size => Math.Log(size))], Math.Log(0.1), 0.95).Interval);
    }
}
