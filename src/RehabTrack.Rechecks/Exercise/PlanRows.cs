namespace RehabTrack.Rechecks.Exercise;

/// <summary>The rows of a plan: what is signed for a place in it, and where its stretches begin and end.</summary>
public static class PlanRows
{
    /// <summary>Days of a week of effective time.</summary>
    public const int DaysOfWeek = 7;

    /// <summary>The gaits, slowest first.</summary>
    public static IReadOnlyList<Gait> Gaits { get; } = Enum.GetValues<Gait>();

    /// <summary>The work that the plan's row says for a place, with the caps put on. Unfilled permits nothing.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place; a step that the plan does not have permits nothing.</param>
    public static Work At(PlanVersion plan, PlanPlace place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (place.Step < 0 || place.Step >= plan.Steps.Count || place.Days < 0)
        {
            return Work.None;
        }

        PlanStep step = plan.Steps[place.Step];
        return plan.Caps.On(
            Row(
                step,
                new(
                    step.Walk?.At(place.Days) ?? 0,
                    step.Trot?.At(place.Days) ?? 0,
                    step.Canter?.At(place.Days) ?? 0,
                    step.Gallop?.At(place.Days) ?? 0
                )
            )
        );
    }

    /// <summary>The most that a step ever permits, component by component: each gait at its ceiling. Caps lower it further.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="step">The step, from 0.</param>
    public static Work CeilingOf(PlanVersion plan, int step)
    {
        ArgumentNullException.ThrowIfNull(plan);
        PlanStep row = plan.Steps[step];
        return Row(row, new(row.Walk?.Most ?? 0, row.Trot?.Most ?? 0, row.Canter?.Most ?? 0, row.Gallop?.Most ?? 0));
    }

    /// <summary>Whether a step says all that an outing needs: a gait, outings, days, a mode and a surface. A step of rest says 0.</summary>
    /// <param name="step">The step.</param>
    public static bool IsFilled(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        bool isRest = Gaits.All(gait => step.Of(gait) is { Most: 0 }) || step is { OutingsADay: 0 } or { DaysAWeek: 0 };
        return isRest
            || (
                Gaits.All(gait => step.Of(gait) is { } rule && (rule.GrowthPerWeek == 0 || rule.Ceiling is not null))
                && step is { OutingsADay: not null, DaysAWeek: not null }
                && step.Modes != WorkModes.None
                && step.Surfaces != Surfaces.None
            );
    }

    /// <summary>Whether the plan's caps lower the row of a place.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place.</param>
    public static bool IsCapped(PlanVersion plan, PlanPlace place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return At(plan with { Caps = PlanCaps.None }, place) != At(plan, place);
    }

    /// <summary>Days of effective time from one place of a stretch to a later one.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="from">The earlier place.</param>
    /// <param name="to">The later place.</param>
    public static int DaysBetween(PlanVersion plan, PlanPlace from, PlanPlace to)
    {
        int days = 0;
        for (PlanPlace place = from; place < to; place = Next(plan, place))
        {
            days++;
        }

        return days;
    }

    /// <summary>The last step of the stretch that a step belongs to: the next one with a gate after it, or the plan's last.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="step">The step, from 0.</param>
    public static int LastOfStretch(PlanVersion plan, int step)
    {
        ArgumentNullException.ThrowIfNull(plan);
        int last = step;
        while (last < plan.Steps.Count - 1 && plan.Steps[last].Gate is null)
        {
            last++;
        }

        return last;
    }

    /// <summary>Which stretch a step belongs to, from 0: how many gates come before it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="step">The step, from 0.</param>
    public static int StretchOf(PlanVersion plan, int step)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Steps.Take(step).Count(earlier => earlier.Gate is not null);
    }

    /// <summary>
    /// Effective days from a place to the gate that ends its stretch: when the shortest lengths of the steps are over. Null when no gate
    /// comes. 0 or less never: a place beyond the shortest length of its step has 1 day left.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place.</param>
    public static int? DaysToGate(PlanVersion plan, PlanPlace place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        int last = LastOfStretch(plan, place.Step);
        if (plan.Steps[last].Gate is null || last == plan.Steps.Count - 1)
        {
            return null;
        }

        return DaysToStep(plan, place, last + 1);
    }

    /// <summary>
    /// Effective days from a place to the first day of a step, as if no gate stood between: 0 for the step it is in; a place beyond the
    /// shortest length of its step has 1 day left.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place.</param>
    /// <param name="step">The step, from 0, not before the place's own; one past the last is the end of the plan's shortest lengths.</param>
    public static int DaysToStep(PlanVersion plan, PlanPlace place, int step)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return step <= place.Step
            ? 0
            : Math.Max(1, plan.Steps[place.Step].ShortestDays - place.Days)
                + plan.Steps.Take(step).Skip(place.Step + 1).Sum(between => between.ShortestDays);
    }

    /// <summary>
    /// The place one effective day later inside the stretch: the next step follows when the shortest length is over and no gate stands
    /// between. Before a gate the place stays at the last day of the step.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place.</param>
    public static PlanPlace Next(PlanVersion plan, PlanPlace place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        PlanStep step = plan.Steps[place.Step];
        if (place.Days + 1 < step.ShortestDays)
        {
            return place with { Days = place.Days + 1 };
        }

        if (place.Step == plan.Steps.Count - 1)
        {
            return place with { Days = place.Days + 1 };
        }

        return step.Gate is null ? new PlanPlace(place.Step + 1, 0) : place;
    }

    private static Work Row(PlanStep step, OutingMinutes outing) =>
        new Work
        {
            Outing = outing,
            OutingsADay = step.OutingsADay ?? 0,
            DaysAWeek = step.DaysAWeek ?? 0,
            Modes = step.Modes,
            Circles = step.Circles ?? Circles.None,
            Surfaces = step.Surfaces,
            Turnout = step.Turnout ?? Turnout.None,
        }.Settled();
}
