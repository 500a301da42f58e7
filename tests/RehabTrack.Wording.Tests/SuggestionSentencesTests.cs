using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Wording.Tests;

public sealed class SuggestionSentencesTests
{
    private static readonly RuleSettings Rules = new();

    private static readonly LevelEvidence Level = new()
    {
        TrackId = "axial-3",
        Part = Part.Body,
        Level = new Centimetres(18),
        From = new DateOnly(2026, 3, 14),
        To = new DateOnly(2026, 7, 14),
        Lesion = new SizeChange
        {
            Size = MeasuredSize.LesionArea,
            Before = 0.4,
            Now = 0.2,
            DetectableBelow = 0.28,
            DetectableAbove = 0.6,
        },
        LesionAtMostPercent = -33,
        Ligament = new SizeChange
        {
            Size = MeasuredSize.LigamentArea,
            Before = 1.5,
            Now = 1.59,
            DetectableBelow = 1.2,
            DetectableAbove = 1.85,
        },
        LigamentAtMostPercent = 27,
        Echogenicity = (new Grade(GradeScales.Echogenicity0To3, 2), new Grade(GradeScales.Echogenicity0To3, 1)),
        FibreAlignment = null,
        EchogenicityNow = new Grade(GradeScales.Echogenicity0To3, 1),
        FibreAlignmentNow = null,
    };

    private static Suggestion Suggested(LevelEvidence? evidence = null) =>
        new()
        {
            Move = SuggestedMove.Hold,
            Severity = FindingSeverity.Note,
            Asked = AskedStep.Trot,
            Hits = [new RuleHit(RuleTable.Of(RuleCode.EvidenceMissing), null)],
            Met = [],
            Unmet = [],
            Evidence = evidence,
            TrotFrom = null,
        };

    private static string Said(AdvanceCondition condition, bool isMet, LevelEvidence? evidence = null) =>
        SuggestionSentences.Of(condition, isMet, Suggested(evidence), Rules).Replace('\u00a0', ' ');

    [Fact]
    public void A_fall_comes_with_its_error() =>
        Assert.Equal(
            "Body at 18 cm: the lesion fell by 50 % since 14 Mar 2026, more than the 30 % that measuring alone can do.",
            Said(AdvanceCondition.LesionFallen, true, Level)
        );

    [Fact]
    public void What_is_not_shown_stable_says_how_far_it_may_have_grown() =>
        Assert.Equal(
            "Body at 18 cm: the ligament area is shown neither to have fallen nor to be stable since 14 Mar 2026: measured +6 %, it may have grown by up to 27 %.",
            Said(AdvanceCondition.LigamentStable, false, Level)
        );

    [Fact]
    public void A_grade_names_both_readings() =>
        Assert.Equal("Body at 18 cm: echogenicity went from 2 to 1.", Said(AdvanceCondition.Brighter, true, Level));

    [Theory]
    [InlineData(AdvanceCondition.LigamentStable)]
    [InlineData(AdvanceCondition.BetterAligned)]
    [InlineData(AdvanceCondition.FibreAlignmentNearNormal)]
    [InlineData(AdvanceCondition.LongEnough)]
    public void What_was_not_read_is_called_so(AdvanceCondition condition)
    {
        string said = Said(condition, false);

        Assert.DoesNotContain("{", said, StringComparison.Ordinal);
        Assert.Matches("missing|not graded|not known|Neither", said);
    }

    [Fact]
    public void Every_rule_has_its_sentence() =>
        Assert.All(RuleTable.All, rule => Assert.EndsWith(".", SuggestionSentences.Of(rule, Rules), StringComparison.Ordinal));

    [Fact]
    public void Every_condition_that_is_met_and_every_one_that_is_not_has_its_sentence()
    {
        LevelEvidence whole = Level with
        {
            FibreAlignment = (new Grade(GradeScales.FibreAlignment0To3, 3), new Grade(GradeScales.FibreAlignment0To3, 2)),
            FibreAlignmentNow = new Grade(GradeScales.FibreAlignment0To3, 2),
        };
        Suggestion suggestion = Suggested(whole) with { TrotFrom = new DateOnly(2026, 5, 9) };
        // Where not both fell, stability is asked instead: a fall is never listed as missing.
        AdvanceCondition[] asked = [AdvanceCondition.LesionFallen, AdvanceCondition.LigamentFallen];

        Assert.All(
            Enum.GetValues<AdvanceCondition>().Select(condition => SuggestionSentences.Of(condition, true, suggestion, Rules)),
            said => Assert.Matches("^[A-Z][^{}]*\\.$", said)
        );
        Assert.All(
            Enum.GetValues<AdvanceCondition>()
                .Except(asked)
                .Select(condition => SuggestionSentences.Of(condition, false, suggestion, Rules)),
            said => Assert.Matches("^[A-Z][^{}]*\\.$", said)
        );
    }

    [Fact]
    public void A_rule_says_the_practices_own_numbers()
    {
        string said = SuggestionSentences.Of(RuleTable.Of(RuleCode.SoundnessMasked), Rules with { ShockWaveDays = 21 });

        Assert.Contains("21", said, StringComparison.Ordinal);
    }
}
