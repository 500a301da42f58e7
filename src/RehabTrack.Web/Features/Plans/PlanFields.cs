using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>The fields of a plan as they are typed, one by one.</summary>
internal static class PlanFields
{
    /// <summary>The fields beside the steps.</summary>
    public static IReadOnlyList<PlanField<PlanEntry>> OfPlan { get; } =
    [
        Line<PlanEntry>(PlanPage.PlanName, plan => plan.Title, (plan, text) => plan.Title = text),
        Line<PlanEntry>(PlanPage.CapOuting, plan => plan.CapOuting, (plan, text) => plan.CapOuting = text),
        Line<PlanEntry>(PlanPage.CapDay, plan => plan.CapDay, (plan, text) => plan.CapDay = text),
        Line<PlanEntry>(PlanPage.CapWeek, plan => plan.CapWeek, (plan, text) => plan.CapWeek = text),
        PlanField<PlanEntry>.Opening(
            PlanPage.FloorTitle,
            plan => plan.HasFloor,
            (plan, isOn) => plan.HasFloor = isOn,
            [
                .. PlanRows.Gaits.Select(gait =>
                    Floor(
                        Say(ExerciseTexts.GaitMinutes, Names.AsTitle(Names.Of(gait))),
                        work => work[gait],
                        (work, from) => work[gait] = from[gait]
                    )
                ),
                Floor(ExerciseTexts.Outings, work => work.Outings, (work, from) => work.Outings = from.Outings),
                Floor(ExerciseTexts.DaysAWeek, work => work.Days, (work, from) => work.Days = from.Days),
                Floor(ExerciseTexts.How, work => PlanWords.Of(work.Modes), (work, from) => work.Modes = from.Modes),
                Floor(ExerciseTexts.Ground, work => PlanWords.Of(work.Surfaces), (work, from) => work.Surfaces = from.Surfaces),
                Floor(ExerciseTexts.CirclesAndGround, work => Names.Of(work.Circles), (work, from) => work.Circles = from.Circles),
                Floor(ExerciseTexts.Standing, work => Names.Of(work.Turnout), (work, from) => work.Turnout = from.Turnout),
            ]
        ),
    ];

    /// <summary>The fields of a step.</summary>
    public static IReadOnlyList<PlanField<StepEntry>> OfStep { get; } =
    [
        Line<StepEntry>(PlanPage.StepName, step => step.Name, (step, text) => step.Name = text),
        .. PlanRows.Gaits.SelectMany(OfGait),
        Line<StepEntry>(PlanPage.OutingsADay, step => step.Outings, (step, text) => step.Outings = text),
        Line<StepEntry>(PlanPage.DaysAWeek, step => step.Days, (step, text) => step.Days = text),
        Line<StepEntry>(PlanPage.ShortestDays, step => step.Length, (step, text) => step.Length = text),
        Line<StepEntry>(PlanPage.Rechecks, step => step.Rechecks, (step, text) => step.Rechecks = text),
        new(PlanPage.Modes, step => PlanWords.Of(step.Modes) ?? "", (step, from) => step.Modes = from.Modes),
        new(PlanPage.SurfacesLabel, step => PlanWords.Of(step.Surfaces) ?? "", (step, from) => step.Surfaces = from.Surfaces),
        new(
            PlanPage.CirclesLabel,
            step => step.Circles is { } circles ? Names.Of(circles) : "",
            (step, from) => step.Circles = from.Circles
        ),
        new(
            PlanPage.TurnoutLabel,
            step => step.Turnout is { } turnout ? Names.Of(turnout) : "",
            (step, from) => step.Turnout = from.Turnout
        ),
        Line<StepEntry>(PlanPage.Note, step => step.Note, (step, text) => step.Note = text),
        PlanField<StepEntry>.Opening(
            PlanPage.GateTitle,
            step => step.HasGate,
            (step, isOn) => step.HasGate = isOn,
            [
                Line<StepEntry>(PlanPage.Criteria, step => step.Criteria, (step, text) => step.Criteria = text),
                new(
                    PlanPage.Rules,
                    step => string.Join(' ', step.Rules.Order()),
                    (step, from) =>
                    {
                        RuleCode[] rules = [.. from.Rules];
                        step.Rules.Clear();
                        step.Rules.UnionWith(rules);
                    }
                )
                {
                    Words = (step, rules) =>
                        string.Join(' ', step.Rules.Order().Select(code => SuggestionSentences.Of(RuleTable.Of(code), rules))),
                },
            ]
        ),
    ];

    private static IEnumerable<PlanField<StepEntry>> OfGait(Gait gait)
    {
        string name = Names.AsTitle(Names.Of(gait));
        return
        [
            Line<StepEntry>(
                Say(PlanPage.FieldFirstWeek, name),
                step => step.Gaits[gait].FirstWeek,
                (step, text) => step.Gaits[gait].FirstWeek = text
            ),
            Line<StepEntry>(
                Say(PlanPage.FieldGrowth, name),
                step => step.Gaits[gait].Growth,
                (step, text) => step.Gaits[gait].Growth = text
            ),
            Line<StepEntry>(
                Say(PlanPage.FieldCeiling, name),
                step => step.Gaits[gait].Ceiling,
                (step, text) => step.Gaits[gait].Ceiling = text
            ),
        ];
    }

    private static PlanField<T> Line<T>(string name, Func<T, string?> read, Action<T, string?> write) =>
        new(name, of => Typed(read(of)), (to, from) => write(to, read(from)));

    private static PlanField<PlanEntry> Floor(string name, Func<WorkEntry, string?> read, Action<WorkEntry, WorkEntry> copy) =>
        new(name, plan => Typed(read(plan.Floor)), (plan, from) => copy(plan.Floor, from.Floor));

    private static string Typed(string? text) => text?.Trim() ?? "";

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
