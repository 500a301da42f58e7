using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Suggestions;

/// <summary>
/// Evaluates the rules of <c>shared/rules.json</c>: each that is on and holds speaks; stop outranks step back, that hold, that advance.
/// A caution goes by its line alone, whatever the error; an advance needs evidence beyond the error and a horse known to be sound.
/// </summary>
internal sealed class SuggestionReader(
    CaseCourse course,
    IReadOnlyList<Finding> findings,
    IReadOnlyList<Trend> trends,
    LevelEvidence? evidence,
    RuleSettings rules,
    TrendSettings lines
)
{
    private enum Soundness
    {
        NotRecorded,
        NotSound,
        Masked,
        Counts,
    }

    /// <summary>The suggestion for a visit.</summary>
    /// <param name="asked">The step up that is asked about.</param>
    /// <param name="signs">What the visit found beside the pictures.</param>
    /// <param name="visit">The date of the visit.</param>
    public Suggestion Read(AskedStep asked, VisitSigns signs, DateOnly visit)
    {
        (AdvanceCondition[] met, AdvanceCondition[] unmet) = Conditions(asked, signs, visit);
        List<RuleHit> hits = [.. RuleTable.All.Where(rules.IsOn).SelectMany(rule => HitsOf(rule, asked, signs, visit))];
        bool held = hits.Exists(hit => hit.Rule.Move != SuggestedMove.Advance);
        Rule advance = RuleTable.Of(AdvanceRule(asked));
        if (!held)
        {
            hits.Add(new RuleHit(unmet.Length == 0 && rules.IsOn(advance) ? advance : RuleTable.Of(RuleCode.EvidenceMissing), null));
        }

        RuleHit[] ordered =
        [
            .. hits.OrderByDescending(hit => hit.Rule.Move).ThenByDescending(hit => hit.Rule.Severity).ThenBy(hit => hit.Rule.Code),
        ];
        return new Suggestion
        {
            Move = ordered[0].Rule.Move,
            Severity = ordered[0].Rule.Severity,
            Asked = asked,
            Hits = ordered,
            Met = met,
            Unmet = unmet,
            Evidence = evidence,
            TrotFrom = Start(signs)?.AddDays(rules.TrotAfterDays),
        };
    }

    private IEnumerable<RuleHit> HitsOf(Rule rule, AskedStep asked, VisitSigns signs, DateOnly visit)
    {
        return rule.Code switch
        {
            RuleCode.SignsPresent => If(signs.HeatSwellingOrPain == true),
            RuleCode.LigamentAreaRed => Found(FindingKind.LigamentAreaRise, FindingSeverity.Red),
            RuleCode.LigamentAreaAmber => Found(FindingKind.LigamentAreaRise, FindingSeverity.Amber),
            RuleCode.NewOrNewlyAbnormalLevel =>
            [
                .. Found(FindingKind.NewlyAbnormalLevel, null),
                .. Found(FindingKind.NewLesionLevel, FindingSeverity.Red),
            ],
            RuleCode.Worsening => Found(FindingKind.Worsening, null),
            RuleCode.PainBackWithWork => If(signs.PainBackWithWork == true),
            RuleCode.NoProgress => Found(FindingKind.NoProgress, null),
            RuleCode.NotSound => If(SoundnessOf(signs, visit, asked) == Soundness.NotSound),
            RuleCode.LesionLevelNotRead => Found(FindingKind.LesionLevelMissed, null),
            RuleCode.LesionLinkUncertain => Found(FindingKind.UncertainLink, FindingSeverity.Amber),
            RuleCode.NotYetReadable => If(trends.Any(trend => trend.Verdict == Verdict.NotYetReadable)),
            RuleCode.SoundnessMasked => If(SoundnessOf(signs, visit, asked) == Soundness.Masked),
            RuleCode.SoundnessNotRecorded => If(SoundnessOf(signs, visit, asked) == Soundness.NotRecorded),
            // These speak only where no other rule does.
            RuleCode.EvidenceMissing or RuleCode.Advance or RuleCode.AdvanceToTrot or RuleCode.AdvanceToCanter => [],
        };

        IEnumerable<RuleHit> If(bool holds) => holds ? [new RuleHit(rule, null)] : [];

        IEnumerable<RuleHit> Found(FindingKind kind, FindingSeverity? severity) =>
            findings
                .Where(finding => !finding.IsEarlier && finding.Kind == kind && (severity is null || finding.Severity == severity))
                .Select(finding => new RuleHit(rule, finding));
    }

    private (AdvanceCondition[] Met, AdvanceCondition[] Unmet) Conditions(AskedStep asked, VisitSigns signs, DateOnly visit)
    {
        List<(AdvanceCondition Condition, bool Holds)> all = [];
        bool lesionFallen = evidence?.Lesion is { } lesion && lesion.Now < lesion.DetectableBelow || trends[0].Verdict == Verdict.AtTarget;
        bool ligamentFallen = evidence?.Ligament is { } ligament && ligament.Now < ligament.DetectableBelow;
        if (lesionFallen && ligamentFallen)
        {
            all.Add((AdvanceCondition.LesionFallen, true));
            all.Add((AdvanceCondition.LigamentFallen, true));
        }
        else
        {
            // Where not both fell, what did not must be shown stable, and the level brighter and better aligned.
            all.Add(
                lesionFallen
                    ? (AdvanceCondition.LesionFallen, true)
                    : (AdvanceCondition.LesionStable, IsStable(evidence?.LesionAtMostPercent))
            );
            all.Add(
                ligamentFallen
                    ? (AdvanceCondition.LigamentFallen, true)
                    : (AdvanceCondition.LigamentStable, IsStable(evidence?.LigamentAtMostPercent))
            );
            all.Add((AdvanceCondition.Brighter, evidence?.Echogenicity is { } bright && bright.Now.Value < bright.Before.Value));
            all.Add((AdvanceCondition.BetterAligned, evidence?.FibreAlignment is { } fibre && fibre.Now.Value < fibre.Before.Value));
        }

        all.Add(
            (
                asked == AskedStep.Trot ? AdvanceCondition.SoundAtTrotInHand : AdvanceCondition.Sound,
                SoundnessOf(signs, visit, asked) == Soundness.Counts
            )
        );
        if (asked == AskedStep.Trot)
        {
            all.Add((AdvanceCondition.LongEnough, Start(signs)?.AddDays(rules.TrotAfterDays) <= visit));
        }

        if (asked == AskedStep.CanterOrGallop)
        {
            all.Add((AdvanceCondition.EchogenicityNearNormal, IsNearNormal(evidence?.EchogenicityNow)));
            all.Add((AdvanceCondition.FibreAlignmentNearNormal, IsNearNormal(evidence?.FibreAlignmentNow)));
        }

        return (
            [.. all.Where(one => one.Holds).Select(one => one.Condition)],
            [.. all.Where(one => !one.Holds).Select(one => one.Condition)]
        );
    }

    private bool IsStable(double? atMostPercent) => atMostPercent <= 100 * lines.AmberLigamentRise;

    // Grades of the older type 1 to 4 are not converted: its 1 is another normal.
    private bool IsNearNormal(Grade? grade) => grade is { Scale.Lowest: 0 } known && known.Value <= rules.CanterHighestGrade;

    private DateOnly? Start(VisitSigns signs) =>
        new[] { course.Onset, course.Reinjury, signs.PlanStart }.Where(date => date is not null).DefaultIfEmpty(null).Max();

    private Soundness SoundnessOf(VisitSigns signs, DateOnly visit, AskedStep asked)
    {
        if (signs.Sound == false || (asked == AskedStep.Trot && signs.SoundAtTrotInHand == false))
        {
            return Soundness.NotSound;
        }

        // A shock wave without a date may have been yesterday.
        bool recentShockWave =
            signs.HadShockWave == true && (signs.LastShockWave is not { } last || visit.DayNumber - last.DayNumber <= rules.ShockWaveDays);
        if (signs.UnderAntiInflammatory == true || signs.HadNeurectomy == true || recentShockWave)
        {
            return Soundness.Masked;
        }

        bool soundKnown = signs.Sound == true && (asked != AskedStep.Trot || signs.SoundAtTrotInHand == true);
        bool coverKnown = signs is { UnderAntiInflammatory: not null, HadNeurectomy: not null, HadShockWave: not null };
        return soundKnown && coverKnown ? Soundness.Counts : Soundness.NotRecorded;
    }

    private static RuleCode AdvanceRule(AskedStep asked) =>
        asked switch
        {
            AskedStep.More => RuleCode.Advance,
            AskedStep.Trot => RuleCode.AdvanceToTrot,
            AskedStep.CanterOrGallop => RuleCode.AdvanceToCanter,
        };
}
