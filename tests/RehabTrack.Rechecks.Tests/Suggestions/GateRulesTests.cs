using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Suggestions;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Suggestions;

public sealed class GateRulesTests
{
    private static readonly RuleSettings Usual = new();

    private static readonly VisitSigns AllWell = new()
    {
        HeatSwellingOrPain = false,
        PainBackWithWork = false,
        Sound = true,
        SoundAtTrotInHand = true,
        UnderAntiInflammatory = false,
        HadShockWave = false,
        HadNeurectomy = false,
    };

    [Fact]
    public void The_rule_that_suggests_the_step_up_is_met() => Assert.Equal(RuleAnswer.Met, Answer(Falling(3), AllWell));

    [Theory]
    [InlineData(null, RuleAnswer.NotKnown)]
    [InlineData(false, RuleAnswer.NotMet)]
    public void Soundness_that_nobody_recorded_is_not_known_and_lameness_is_not_met(bool? sound, RuleAnswer answer) =>
        Assert.Equal(answer, Answer(Falling(3), AllWell with { Sound = sound }));

    [Fact]
    public void One_examination_cannot_answer() => Assert.Equal(RuleAnswer.NotKnown, Answer(Falling(1), AllWell));

    [Fact]
    public void What_is_known_to_be_worse_is_not_met_whatever_else_is_not_known() =>
        Assert.Equal(RuleAnswer.NotMet, Answer(Course(0.25, 0.5, 1), AllWell with { Sound = null }));

    [Fact]
    public void A_rule_that_is_switched_off_cannot_answer()
    {
        RuleSettings off = Usual.WithOff([RuleCode.Advance]);
        AnalysisSettings settings = new() { Rules = off };
        CaseCourse course = Falling(3);

        Suggestion said = CaseAnalyser.Suggest(course, Analysed(course, settings), AskedStep.More, AllWell);

        Assert.Equal(RuleAnswer.NotKnown, GateRules.Of(RuleCode.Advance, said, off));
    }

    [Fact]
    public void Trot_asked_for_too_early_is_not_met_because_its_day_is_known()
    {
        CaseCourse course = Falling(3);
        Suggestion said = CaseAnalyser.Suggest(
            course,
            Analysed(course),
            GateRules.AskedOf(RuleCode.AdvanceToTrot),
            AllWell with
            {
                PlanStart = course.Examinations[^1].Date,
            }
        );

        Assert.Equal(RuleAnswer.NotMet, GateRules.Of(RuleCode.AdvanceToTrot, said, Usual));
    }

    [Theory]
    [InlineData(RuleCode.Advance, AskedStep.More)]
    [InlineData(RuleCode.AdvanceToTrot, AskedStep.Trot)]
    [InlineData(RuleCode.AdvanceToCanter, AskedStep.CanterOrGallop)]
    [InlineData(RuleCode.NoProgress, AskedStep.More)]
    public void A_rule_is_asked_about_its_own_step(RuleCode rule, AskedStep asked) => Assert.Equal(asked, GateRules.AskedOf(rule));

    [Fact]
    public void Over_several_cases_not_met_outranks_not_known_and_that_outranks_met()
    {
        Assert.Equal(RuleAnswer.NotKnown, GateRules.Over([]));
        Assert.Equal(RuleAnswer.Met, GateRules.Over([RuleAnswer.Met, RuleAnswer.Met]));
        Assert.Equal(RuleAnswer.NotKnown, GateRules.Over([RuleAnswer.NotKnown, RuleAnswer.Met]));
        Assert.Equal(RuleAnswer.NotMet, GateRules.Over([RuleAnswer.NotMet, RuleAnswer.NotKnown, RuleAnswer.Met]));
    }

    private static RuleAnswer Answer(CaseCourse course, VisitSigns signs) =>
        GateRules.Of(RuleCode.Advance, CaseAnalyser.Suggest(course, Analysed(course), AskedStep.More, signs), Usual);

    private static CaseCourse Falling(int visits) => Course([.. new[] { 1, 0.5, 0.25 }.Take(visits)]);

    /// <summary>Examinations 60 days apart; lesion and ligament of every level times these.</summary>
    private static CaseCourse Course(params double[] times) =>
        Case(
            times.Select(
                (share, visit) =>
                    Exam(
                        60 * visit,
                        SixLevels(share, null)
                            .Select(reading =>
                                reading with
                                {
                                    LigamentArea = Cm2(reading.LigamentArea!.Value.Value * (0.6 + (0.4 * share))),
                                }
                            )
                    )
            )
        );
}
