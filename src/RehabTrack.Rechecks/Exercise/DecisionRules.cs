using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exercise;

/// <summary>What must be right in the figures of a decision. Whether it counts in full is another matter: the permit says.</summary>
public static class DecisionRules
{
    /// <summary>All problems of a decision's place, ceilings and floor at once.</summary>
    /// <param name="decision">The decision.</param>
    /// <param name="plan">The plan version it is signed on.</param>
    public static IReadOnlyList<Problem> Check(Decision decision, PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(plan);
        List<Problem> problems = [];
        if (decision.Kind is DecisionKind.Advance or DecisionKind.StepBack)
        {
            problems.AddRange(decision.Place is { } place ? PlanRules.CheckPlace(plan, place) : [new("place", "place-missing")]);
        }

        if (decision.Limits is { } limits)
        {
            int?[] minutes = [limits.Walk, limits.Trot, limits.Canter, limits.Gallop];
            problems.AddRange(
                minutes
                    .Where(limit => limit < 0)
                    .Select(limit => new Problem("limits", "minutes-negative", limit!.Value.ToString(CultureInfo.InvariantCulture)))
            );
        }

        if (decision.Floor is not null)
        {
            problems.AddRange(PlanRules.Check(plan with { Floor = decision.Floor }).Where(problem => problem.Field == "floor"));
        }

        return problems;
    }
}
