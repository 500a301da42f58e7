using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;

namespace RehabTrack.Rechecks.Tests.Repeats;

public sealed class RepeatStudyTests
{
    /// <summary>
    /// Bland and Altman 1986, Lancet i:307, table 1: peak flow of 17 subjects by two meters, twice each. R 4.2.2 with the columns below as a, b
    /// and s: d &lt;- a - s; c(mean(d), sd(d), mean(d) + c(-1.96, 1.96) * sd(d)); w &lt;- sqrt(sum((a - b)^2)/34); c(w, 1.96 * sqrt(2) * w).
    /// </summary>
    public sealed class Peak_flow
    {
        private static readonly double[] LargeFirst = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
        private static readonly double[] LargeSecond =
        [
            490,
            397,
            512,
            401,
            470,
            611,
            415,
            431,
            638,
            429,
            420,
            633,
            275,
            492,
            165,
            372,
            421,
        ];
        private static readonly double[] SmallFirst = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

        [Fact]
        public void First_readings_of_the_two_meters_have_the_limits_of_agreement_of_the_paper()
        {
            Agreement agreement = Assert.Single(Study([.. Row("large", LargeFirst), .. Row("small", SmallFirst)]).BetweenMeasurers);

            Assert.Equal(-2.1176470588, agreement.Bias, 9);
            Assert.Equal(38.7651298736, agreement.StandardDeviation, 9);
            Assert.Equal(-78.0973016, agreement.Limits.Lower, 1e-7);
            Assert.Equal(73.8620075, agreement.Limits.Upper, 1e-7);
            // The paper prints limits of two SD: −79.7 and 75.5, from a rounded SD.
            Assert.Equal(-79.7, agreement.Bias - (2 * agreement.StandardDeviation), 0.06);
            Assert.Equal(75.5, agreement.Bias + (2 * agreement.StandardDeviation), 0.1);
            // The paper: interval of the bias −22.0 to 17.8, of the lower limit −114.3 to −45.1, with two SD.
            Assert.Equal(-22.0, agreement.Bias95.Lower, 0.1);
            Assert.Equal(17.8, agreement.Bias95.Upper, 0.1);
            Assert.Equal(34.6, agreement.LimitHalfWidth, 0.1);
        }

        [Fact]
        public void Repeats_of_the_large_meter_have_its_repeat_sd_and_detectable_change()
        {
            RepeatError error = Study([.. Row("large", LargeFirst), .. Row("large", LargeSecond)]).All!;

            Assert.Equal(15.3066690579, error.WithinStandardDeviation, 9);
            Assert.Equal(42.4279219937, error.DetectableChange, 9);
            Assert.Equal((17, 34, 17), (error.Subjects, error.Values, error.DegreesOfFreedom));
        }

        private static IEnumerable<RepeatTracing> Row(string meter, double[] values) =>
            values.Select((value, subject) => Tracing($"subject {subject}", meter, value));
    }

    private static RepeatTracing Tracing(string subject, string? measurer, double value, RepeatKind kind = RepeatKind.SameHorseAndDay) =>
        new(subject, kind, MeasuredSize.LigamentArea, measurer, value);

    private static RepeatStudy Study(IEnumerable<RepeatTracing> tracings) => Assert.Single(RepeatStudy.Of(tracings));

    // By hand: 1, 3 (mean 2, variance 2, df 1) and 4, 5, 6 (mean 5, variance 1, df 2): s_w² = (2 + 2)/3; cv² = (2/4 + 2·1/25)/3.
    [Fact]
    public void Subjects_weigh_by_their_degrees_of_freedom()
    {
        RepeatError error = Study([
            .. new[] { 1.0, 3 }.Select(value => Tracing("a", "Ada", value)),
            .. new[] { 4.0, 5, 6 }.Select(value => Tracing("b", "Ada", value)),
        ]).All!;

        Assert.Equal(Math.Sqrt(4.0 / 3), error.WithinStandardDeviation, 12);
        Assert.Equal(Math.Sqrt(0.58 / 3), error.Cv!.Value, 12);
        Assert.Equal((2, 5, 3), (error.Subjects, error.Values, error.DegreesOfFreedom));
        // R 4.2.2: qchisq(c(.975, .025), 3), so factors of 0.566489547 and 3.728547276.
        Assert.Equal(error.WithinStandardDeviation * 0.566489547, error.Lower95, 8);
        Assert.Equal(error.WithinStandardDeviation * 3.728547276, error.Upper95, 8);
    }

    [Fact]
    public void Two_persons_at_one_subject_are_no_repeat_of_one_person()
    {
        RepeatStudy study = Study([
            Tracing("a", "Ada", 1.0),
            Tracing("a", "Ben", 1.4),
            Tracing("b", "Ada", 2.0),
            Tracing("b", "ben ", 2.2),
        ]);

        Assert.Null(study.All);
        Assert.Empty(study.ByMeasurer);
        Agreement agreement = Assert.Single(study.BetweenMeasurers);
        Assert.Equal(("Ada", "Ben"), (agreement.First, agreement.Second));
        Assert.Equal(-0.3, agreement.Bias, 12);
        Assert.False(study.MayBecomeSetting);
    }

    [Fact]
    public void Images_and_horses_are_never_mixed_and_only_horses_may_become_the_setting()
    {
        RepeatTracing[] Pairs(RepeatKind kind) =>
            [
                .. Enumerable
                    .Range(0, 10)
                    .SelectMany(subject => new[] { 1.0, 1.1 }.Select(value => Tracing($"s{subject}", "Ada", value + subject, kind))),
            ];

        IReadOnlyList<RepeatStudy> studies = RepeatStudy.Of([.. Pairs(RepeatKind.SameImage), .. Pairs(RepeatKind.SameHorseAndDay)]);

        Assert.Equal([RepeatKind.SameHorseAndDay, RepeatKind.SameImage], studies.Select(study => study.Kind));
        Assert.Equal([true, false], studies.Select(study => study.MayBecomeSetting));
        Assert.All(studies, study => Assert.Equal(10, study.All!.DegreesOfFreedom));
        Assert.False(Study(Pairs(RepeatKind.SameHorseAndDay).SkipLast(1)).MayBecomeSetting);
    }

    [Fact]
    public void A_spread_that_grows_with_the_size_is_told()
    {
        RepeatTracing[] Pairs(Func<int, double> spread) =>
            [
                .. Enumerable
                    .Range(1, 12)
                    .SelectMany(size => new[] { -0.5, 0.5 }.Select(side => Tracing($"s{size}", "Ada", size + (side * spread(size))))),
            ];

        Assert.True(Study(Pairs(size => 0.1 * size)).All!.GrowsWithSize);
        Assert.False(Study(Pairs(size => 0.1 + (0.01 * (size % 2)))).All!.GrowsWithSize);
    }

    [Fact]
    public void Repeats_of_nothing_have_no_cv_and_do_not_become_the_setting()
    {
        RepeatStudy study = Study([
            .. Enumerable.Range(0, 12).SelectMany(subject => new[] { 0.0, 0 }.Select(value => Tracing($"s{subject}", "Ada", value))),
        ]);

        Assert.Null(study.All!.Cv);
        Assert.Equal(0, study.All.WithinStandardDeviation);
        Assert.False(study.MayBecomeSetting);
    }
}
