using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>What there is to choose from where a decision is written.</summary>
public static class DecisionChoices
{
    /// <summary>How clear a sign is.</summary>
    public static IReadOnlyList<Choice<SignGrade>> Grades { get; } =
    [.. Enum.GetValues<SignGrade>().Select(grade => new Choice<SignGrade>(grade, Names.Of(grade)))];

    /// <summary>The steps of the plan in force.</summary>
    public static IReadOnlyList<Choice<int?>> Steps(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. Enumerable.Range(0, plan.Steps.Count).Select(index => new Choice<int?>(index, PlanWords.Step(plan, index)))];
    }

    /// <summary>The decisions that can be corrected. A later one may come while this is written: each is known by itself, not by its place.</summary>
    public static IReadOnlyList<Choice<Guid?>> Corrects(IReadOnlyList<DecisionView> past) =>
        [.. past.Select(decision => new Choice<Guid?>(decision.Id, DecisionWords.Title(decision)) { Key = decision.Id.ToString() })];
}
