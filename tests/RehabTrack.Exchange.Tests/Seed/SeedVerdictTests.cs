using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Exchange.Tests.Seed;

/// <summary>Each story of the demo is told by the program as it was invented.</summary>
public sealed class SeedVerdictTests
{
    [Theory]
    [InlineData("Quillon LH body", Verdict.Healing, Measure.LesionVolume, 6)]
    [InlineData("Tansy Fathom RH proximal", Verdict.Stalled, Measure.LesionVolume, 6)]
    [InlineData("Pepperwick RF medial branch", Verdict.Worsening, Measure.LesionVolume, 5)]
    [InlineData("Old Saltmarsh LH", Verdict.Healing, Measure.LesionVolume, 5)]
    [InlineData("Old Saltmarsh RH", Verdict.Stalled, Measure.LesionVolume, 5)]
    [InlineData("Linnet Minor LF body", Verdict.NotYetReadable, Measure.LesionVolume, 2)]
    [InlineData("Brimble Hob LF lateral branch", Verdict.Healing, Measure.LesionVolume, 4)]
    [InlineData("Ironbell RF tendon", Verdict.AtTarget, Measure.LesionVolume, 7)]
    [InlineData("Wrenfold Duchess LH proximal", Verdict.NotYetReadable, Measure.Thickness, 4)]
    public void A_case_of_the_demo_gets_the_verdict_of_its_story(string label, Verdict verdict, Measure measure, int examinations)
    {
        CaseAnalysis analysis = Analyse(label);

        Assert.Equal(verdict, analysis.Trend.Verdict);
        Assert.Equal(measure, analysis.Trend.Measure);
        Assert.Equal(examinations, analysis.Burdens.Count);
    }

    [Fact]
    public void The_branch_that_did_too_much_work_has_a_level_that_was_normal_before()
    {
        IReadOnlyList<Finding> findings = Analyse("Pepperwick RF medial branch").Findings;

        Assert.Contains(
            findings,
            finding => finding is { Kind: FindingKind.NewlyAbnormalLevel, Severity: FindingSeverity.Red, IsEarlier: false }
        );
        Assert.Contains(findings, finding => finding is { Kind: FindingKind.Worsening, Severity: FindingSeverity.Red });
    }

    [Fact]
    public void The_body_lesion_that_heals_has_nothing_to_look_at() =>
        Assert.DoesNotContain(Analyse("Quillon LH body").Findings, finding => finding.Severity != FindingSeverity.Note);

    [Fact]
    public void The_overdue_horse_was_last_seen_between_80_and_100_days_ago()
    {
        DateOnly last = SeedFolder.Case("Brimble Hob LF lateral branch").Course.Examinations.Max(examination => examination.Date);

        Assert.InRange(SeedFolder.Anchor.DayNumber - last.DayNumber, 80, 100);
    }

    [Fact]
    public void The_bilateral_cases_are_the_two_hind_limbs_of_one_horse()
    {
        CaseFile left = SeedFolder.Case("Old Saltmarsh LH");
        CaseFile right = SeedFolder.Case("Old Saltmarsh RH");

        Assert.Equal(left.Horse, right.Horse);
        Assert.Equal(Rechecks.Anatomy.AnatomyRules.OtherSide(left.Course.Limb), right.Course.Limb);
    }

    private static CaseAnalysis Analyse(string label) =>
        CaseAnalyser.Analyse(SeedFolder.Case(label).Course, [], new AnalysisSettings(), SeedFolder.Anchor);
}
