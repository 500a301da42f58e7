using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Referrals;
using RehabTrack.Reports.Paper;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Features.About;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Referrals;

/// <summary>A released report as a sheet of paper: the same words in the same order as on its page.</summary>
public static class ReportPaper
{
    /// <summary>The sheet of a report.</summary>
    public static PaperSheet Of(ReportView report)
    {
        ArgumentNullException.ThrowIfNull(report);
        ReportContent content = report.Content;
        return new PaperSheet
        {
            Title = $"{content.HorseName} – {ReportWords.ForReader(report.Reader)}",
            Author = content.PracticeName,
            Foot = string.Format(
                TextCulture.Default,
                ReferralTexts.PaperFoot,
                content.HorseName,
                Figures.Date(content.Date),
                content.PracticeName
            ),
            Blocks =
            [
                new PaperHeading(content.HorseName, 1),
                new PaperText(ReportWords.ForReader(report.Reader), PaperTone.Strong),
                new PaperText(ReportWords.Released(content), PaperTone.Soft),
                new PaperHeading(ReferralTexts.Horse, 2),
                new PaperTable(
                    [new PaperColumn(""), new PaperColumn("")],
                    [.. ReportWords.Facts(content).Select(fact => new PaperRow(fact.Name, fact.Value))]
                ),
                .. content.Words is { } words
                    ? (PaperBlock[])[new PaperHeading(ReportWords.WordsOf(content), 2), new PaperText(words)]
                    : [],
                new PaperHeading(ReferralTexts.Verdict, 2),
                .. Verdict(content.Verdict),
                new PaperHeading(ReferralTexts.Examinations, 2),
                Examinations(content.Examinations),
                .. content.Examinations.Reverse().SelectMany(Readings),
                new PaperHeading(ReferralTexts.Decision, 2),
                .. content is { Decision: { } decision, DecidedOn: { } on }
                    ? (PaperBlock[])
                        [
                            new PaperText(ReportWords.Decided(decision, on), PaperTone.Strong),
                            new PaperText(DecisionWords.Parameters(decision, content.Plan)),
                        ]
                    : [new PaperText(ReferralTexts.DecisionNone)],
                new PaperHeading(ReferralTexts.Plan, 2),
                .. content.Plan is { } plan ? Plan(plan) : [new PaperText(ReferralTexts.PlanNone)],
                new PaperText(ReportWords.Care, PaperTone.Caution),
                new PaperText($"{content.PracticeName}. {Call(content.PracticePhone)}", PaperTone.Strong),
            ],
        };
    }

    private static IEnumerable<PaperBlock> Verdict(ReportVerdict? verdict) =>
        verdict is null
            ? [new PaperText(ReferralTexts.VerdictNone)]
            :
            [
                new PaperText(Names.AsTitle(Names.Of(verdict.Verdict)), PaperTone.Strong),
                .. ReportWords.Under(verdict).Select(line => new PaperText(line)),
                new PaperText(ReportWords.Engine(verdict), PaperTone.Soft),
                new PaperText(UsePage.Who, PaperTone.Soft),
                new PaperText(UsePage.Validation, PaperTone.Soft),
                new PaperText(
                    string.Join('\n', [UsePage.FailsTitle, .. KnownFailures.Sentences.Select(sentence => $"– {sentence}")]),
                    PaperTone.Soft
                ),
            ];

    private static PaperTable Examinations(IReadOnlyList<ReportExamination> examinations) =>
        new(
            [
                new PaperColumn(ReferralTexts.Date),
                new PaperColumn(ReferralTexts.Volume, IsFigure: true),
                new PaperColumn(ReferralTexts.Worst, IsFigure: true),
                new PaperColumn(ReferralTexts.Total, IsFigure: true),
                new PaperColumn(ReferralTexts.Length, IsFigure: true),
                new PaperColumn(ReferralTexts.SignedBy),
            ],
            [
                .. examinations.Select(examination => new PaperRow([
                    Figures.Date(examination.Date),
                    .. ReportWords.FiguresOf(examination).Select(told => told.Figure),
                    examination.SignedBy,
                ])),
            ]
        );

    private static IEnumerable<PaperBlock> Readings(ReportExamination examination)
    {
        IReadOnlyList<EntryRow> rows = ReportWords.Readings(examination);
        IReadOnlyList<EntryColumn> columns = ReportWords.Columns(rows);
        return
        [
            new PaperHeading(ReportWords.ReadingsOf(examination), 3),
            new PaperText(ReportWords.Examined(examination), PaperTone.Soft, KeepsNext: true),
            new PaperTable(
                [
                    .. columns.Select(column => new PaperColumn(
                        EntryTexts.UnitOf(column, examination.Zones is not null) is { } unit
                            ? $"{EntryTexts.NameOf(column)}\n{unit}"
                            : EntryTexts.NameOf(column),
                        ReportWords.IsFigure(column)
                    )),
                ],
                [.. rows.Select(row => new PaperRow([.. columns.Select(column => ReportWords.Cell(row, column))]))]
            ),
        ];
    }

    private static IEnumerable<PaperBlock> Plan(PlanVersion plan)
    {
        IReadOnlyList<Gait> gaits = PlanWords.GaitsOf(plan);
        return
        [
            new PaperText(ReportWords.Planned(plan), KeepsNext: true),
            new PaperTable(
                [
                    new PaperColumn(ExerciseTexts.Step),
                    .. gaits.Select(gait => new PaperColumn(Names.AsTitle(Names.Of(gait)))),
                    new PaperColumn(ExerciseTexts.HowOften),
                    new PaperColumn(ExerciseTexts.HowAndWhere),
                    new PaperColumn(ExerciseTexts.Standing),
                    new PaperColumn(ExerciseTexts.AtLeast, IsFigure: true),
                ],
                [.. plan.Steps.Index().SelectMany(step => Step(plan, step.Index, step.Item, gaits))]
            ),
            .. PlanWords.Caps(plan.Caps) is { } caps ? (PaperBlock[])[new PaperText(caps, PaperTone.Soft)] : [],
            new PaperText(PlanWords.Floor(plan), PaperTone.Soft),
        ];
    }

    private static IEnumerable<PaperRow> Step(PlanVersion plan, int index, PlanStep step, IReadOnlyList<Gait> gaits)
    {
        yield return new PaperRow([
            PlanWords.Step(plan, index),
            .. gaits.Select(gait => PlanWords.Rule(step.Of(gait)) ?? ExerciseTexts.NotFilled),
            PlanWords.HowOften(step) ?? ExerciseTexts.NotFilled,
            PlanWords.Where(step) ?? ExerciseTexts.NotFilled,
            Names.Of(step.Turnout ?? Turnout.None),
            Lines(Figures.Days(step.ShortestDays), PlanWords.RecheckEvery(step)),
        ]);
        if (step.Gate is { } gate)
        {
            yield return new PaperRow(
                Lines(
                    gate.Criteria.Length > 0 ? $"{ExerciseTexts.GateRow}: {gate.Criteria}" : ExerciseTexts.GateRow,
                    PlanWords.GateRules(gate, new RuleSettings())
                )
            );
        }
    }

    private static string Call(string? phone) => phone is null ? OutsidePages.CallWithoutNumber : $"{OutsidePages.Call} {phone}";

    private static string Lines(string first, string? second) => second is null ? first : $"{first}\n{second}";
}
