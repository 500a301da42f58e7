using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording.Tests;

public sealed class FindingSentencesTests
{
    public static TheoryData<FindingKind> Kinds => [.. Enum.GetValues<FindingKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_says_what_it_is_and_what_to_do_next(FindingKind kind)
    {
        foreach (FindingSeverity severity in Enum.GetValues<FindingSeverity>())
        {
            foreach (bool inside in new[] { false, true })
            {
                string sentence = FindingSentences.Of(Example(kind) with { Severity = severity, MayBeMeasurementError = inside });
                Assert.EndsWith(".", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("{", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("  ", sentence, StringComparison.Ordinal);
                Assert.DoesNotContain("–", sentence, StringComparison.Ordinal);
                Assert.Matches("[.;:] \\p{L}", sentence);
            }
        }
    }

    [Fact]
    public void No_two_kinds_share_a_sentence()
    {
        string[] sentences = [.. Enum.GetValues<FindingKind>().Select(kind => FindingSentences.Of(Example(kind)))];
        Assert.Equal(sentences.Length, sentences.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void A_rise_inside_the_error_asks_to_measure_again() =>
        Assert.Equal(
            "Body at 16 cm: the ligament area is up by 12 % since 9 Jul 2026; up to 21 % may be measurement error: measure again before more work.",
            Plain(Example(FindingKind.LigamentAreaRise) with { MayBeMeasurementError = true, Probability = null })
        );

    [Fact]
    public void A_comparison_over_an_uncertain_link_says_so() =>
        Assert.EndsWith(
            "The link to the earlier level is uncertain (64 %).",
            Plain(Example(FindingKind.LigamentAreaRise)),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_tape_shift_is_told_against_the_others() =>
        Assert.StartsWith(
            "The tape of 7 Sep 2026 reads about 0.8 cm lower than the others",
            Plain(Example(FindingKind.TapeShift)),
            StringComparison.Ordinal
        );

    [Fact]
    public void An_uncertain_link_names_the_other_levels() =>
        Assert.Contains("it may be the one at 14 cm or 18 cm", Plain(Example(FindingKind.UncertainLink)), StringComparison.Ordinal);

    [Fact]
    public void An_uncertain_first_place_has_no_probability_to_show() =>
        Assert.StartsWith(
            "Body at 16 cm on 7 Sep 2026: it is not sure that this is a place read for the first time; it may be the one at 14 cm or 18 cm.",
            Plain(Example(FindingKind.UncertainLink) with { Probability = null }),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_trend_of_one_of_several_lesions_names_the_lesion() =>
        Assert.StartsWith(
            "Lesion A (body): The trend is worsening since 7 Sep 2026.",
            Plain(Example(FindingKind.Worsening)),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_trend_of_the_case_names_none() =>
        Assert.StartsWith(
            "The trend shows no progress since 7 Sep 2026.",
            Plain(Example(FindingKind.NoProgress) with { Part = null, Level = null, Lesion = null }),
            StringComparison.Ordinal
        );

    private static string Plain(Finding finding) => FindingSentences.Of(finding).Replace("\u00a0", " ", StringComparison.Ordinal);

    private static Finding Example(FindingKind kind) =>
        new()
        {
            Kind = kind,
            Severity = FindingSeverity.Amber,
            ExaminationId = "2026-09-07",
            Date = new DateOnly(2026, 9, 7),
            ComparedWith = new DateOnly(2026, 7, 9),
            Part = Part.Body,
            Level = new Centimetres(16),
            TrackId = "axial-3",
            Lesion = "A",
            ChangePercent = 12,
            DetectablePercent = 21.4,
            Probability = 0.64,
            Length = new Centimetres(-0.8),
            Count = 2,
            OtherLevels = [new Centimetres(14), new Centimetres(18)],
            Persons = ["Ada", "Ben"],
        };
}
