using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Wording.Tests;

public sealed class VerdictSentencesTests
{
    private const string Space = "\u00a0";

    public static TheoryData<VerdictReason> Reasons => [.. Enum.GetValues<VerdictReason>()];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Every_reason_has_a_sentence_of_its_own_that_leaves_no_gap(VerdictReason reason)
    {
        foreach (Measure? measure in Enum.GetValues<Measure>().Cast<Measure?>().Prepend(null))
        {
            foreach (double? change in new double?[] { null, 2, -40, 60 })
            {
                string sentence = VerdictSentences.Headline(Example(reason, measure, change));
                Assert.EndsWith(".", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("{", sentence, StringComparison.Ordinal);
                if (measure is not null)
                {
                    Assert.DoesNotContain("  ", sentence, StringComparison.Ordinal);
                    Assert.DoesNotContain(" .", sentence, StringComparison.Ordinal);
                    Assert.DoesNotContain("–", sentence, StringComparison.Ordinal);
                }
            }
        }
    }

    [Fact]
    public void No_two_reasons_share_a_sentence()
    {
        string[] sentences = [.. Enum.GetValues<VerdictReason>().Select(reason => VerdictSentences.Headline(Example(reason)))];
        Assert.Equal(sentences.Length, sentences.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void No_progress_says_since_when_and_against_which_error() =>
        Assert.Equal(
            "No progress since 9 Jul 2026: the lesion is where it was two examinations ago (+2 %, where ± 16 % is measurement error).",
            Plain(VerdictSentences.Headline(Example(VerdictReason.BelowAcceptableRate)))
        );

    [Fact]
    public void No_progress_beyond_the_error_does_not_say_that_nothing_changed() =>
        Assert.Equal(
            "No progress since 9 Jul 2026: the lesion changed by −18 %, and healing should have brought it down by now.",
            Plain(VerdictSentences.Headline(Example(VerdictReason.BelowAcceptableRate, change: -18)))
        );

    [Fact]
    public void Healing_says_how_fast() =>
        Assert.Equal(
            "Healing: over the examinations since 9 Jul 2026, the lesion has shrunk by 22 % in 60 days, which is more than measurement error explains.",
            Plain(VerdictSentences.Headline(Example(VerdictReason.FallOfSlope, change: -40, last: 1.2)))
        );

    [Fact]
    public void A_latest_step_against_the_slope_is_told()
    {
        Trend healing = Example(VerdictReason.FallOfSlope, change: -40, last: 1.2);
        Trend turned = healing with
        {
            Series = [.. healing.Series.SkipLast(1), healing.Series[^1] with { Value = 1.1 * healing.Series[^2].Value }],
        };

        Assert.DoesNotContain("although", VerdictSentences.Headline(healing), StringComparison.Ordinal);
        Assert.EndsWith(
            "although it is larger than at the examination before.",
            VerdictSentences.Headline(turned),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Worsening_above_the_best_says_what_the_best_was() =>
        Assert.Equal(
            "Worsening: on 6 Nov 2026 the lesion is larger than at its best on 9 Jul 2026 (+60 %, where ± 16 % is measurement error).",
            Plain(VerdictSentences.Headline(Example(VerdictReason.RiseAboveBest, change: 60)))
        );

    [Fact]
    public void Target_says_what_is_left() =>
        Assert.Equal(
            "At target: on 6 Nov 2026 the lesion has come down to 8 % of what it was on 9 Jul 2026.",
            Plain(VerdictSentences.Headline(Example(VerdictReason.TargetReached, last: 0.16)))
        );

    [Fact]
    public void The_figures_name_measure_span_rate_and_interval() =>
        Assert.Equal(
            "Lesion volume, 3 examinations (9 Jul 2026 to 6 Nov 2026): −22 % in 60 days, 95 % interval −28 % to −16 %.",
            Plain(VerdictSentences.Basis(Example(VerdictReason.FallOfSlope)))
        );

    [Theory]
    [InlineData(1, "One more examination at the usual interval would settle it, if it goes on like this.")]
    [InlineData(2, "Two more examinations at the usual interval would settle it, if it goes on like this.")]
    [InlineData(null, "How many more examinations would settle it cannot be said.")]
    public void An_open_verdict_says_how_many_examinations_would_settle_it(int? more, string expected)
    {
        Trend open = Example(VerdictReason.Undecided) with { MoreExaminationsToSettle = more };
        Assert.Equal(expected, Plain(VerdictSentences.Settling(open)!));
        Assert.EndsWith(expected, Plain(VerdictSentences.Basis(open)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(VerdictReason.OnlyOneExamination, "One more examination shows a difference, two more a trend.")]
    [InlineData(VerdictReason.AcutePhase, "Three examinations after these weeks make a trend.")]
    [InlineData(VerdictReason.NoMeasure, "Three examinations that measure the lesion at the same level make a trend.")]
    [InlineData(VerdictReason.WorstLevelNotRead, "It can be settled by reading this level again, or by a word on its link.")]
    [InlineData(VerdictReason.GradesUndecided, "Areas or thicknesses of three examinations would make a trend.")]
    [InlineData(
        VerdictReason.NoReference,
        "A sound value gives it a rate: measure the same level of the other limb, if that limb is sound."
    )]
    public void Where_no_number_can_be_said_the_figures_end_with_what_would_settle_it(VerdictReason reason, string expected)
    {
        Trend open = Example(reason);
        Assert.Equal(expected, Plain(VerdictSentences.Settling(open)!));
        Assert.EndsWith(expected, Plain(VerdictSentences.Basis(open)), StringComparison.Ordinal);
        Assert.EndsWith(expected, Plain(VerdictSentences.Basis(open with { Measure = null })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_settled_verdict_asks_for_nothing_more() => Assert.Null(VerdictSentences.Settling(Example(VerdictReason.FallOfSlope)));

    private static string Plain(string text) => text.Replace(Space, " ", StringComparison.Ordinal);

    private static Trend Example(VerdictReason reason, Measure? measure = Measure.LesionVolume, double? change = 2, double last = 2.04) =>
        new()
        {
            Verdict = reason == VerdictReason.FallOfSlope ? Verdict.Healing : Verdict.NotYetReadable,
            Reason = reason,
            Measure = measure,
            Series = [Point(new DateOnly(2026, 7, 9), 2), Point(new DateOnly(2026, 9, 7), 2), Point(new DateOnly(2026, 11, 6), last)],
            Window = new SlopeFigures
            {
                LogPer60Days = Math.Log(0.78),
                StandardError = 0.05,
                Lower95Log = Math.Log(0.72),
                Upper95Log = Math.Log(0.84),
                Examinations = 3,
                From = new DateOnly(2026, 7, 9),
                To = new DateOnly(2026, 11, 6),
            },
            Course = null,
            ChangePercent = change,
            DetectableRisePercent = 16,
            DetectableFallPercent = -14,
            MoreExaminationsToSettle = null,
            SlowestAcceptableLogPer60Days = -0.15,
            Projection = null,
            Since = new DateOnly(2026, 7, 9),
        };

    private static SeriesPoint Point(DateOnly date, double value) =>
        new()
        {
            ExaminationId = date.ToString("O", System.Globalization.CultureInfo.InvariantCulture),
            Date = date,
            Value = value,
            Lower95 = 0.9 * value,
            Upper95 = 1.1 * value,
            Complete = true,
            InTrend = true,
            InWindow = true,
        };
}
