using System.Globalization;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Rechecks.Exercise;

/// <summary>What must be right before a plan can be signed. Unfilled rows are no problem: they permit nothing.</summary>
public static class PlanRules
{
    private const int MinutesOfDay = 24 * 60;
    private const int LongestDays = 3 * 366;
    private static readonly ScheduleSettings Rhythm = new();

    /// <summary>All problems of a plan at once. Fields read <c>steps[2].trot</c>, counted from 0.</summary>
    /// <param name="plan">The plan.</param>
    public static IReadOnlyList<Problem> Check(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<Problem> problems = [];
        if (plan.Steps.Count == 0)
        {
            problems.Add(new("steps", "plan-without-steps"));
        }

        for (int index = 0; index < plan.Steps.Count; index++)
        {
            CheckStep(plan, index, problems);
        }

        CheckCap("caps.outing", plan.Caps.OutingMinutes, problems, MinutesOfDay);
        CheckCap("caps.day", plan.Caps.DayMinutes, problems, MinutesOfDay);
        CheckCap("caps.week", plan.Caps.WeekMinutes, problems, PlanRows.DaysOfWeek * MinutesOfDay);
        if (plan.Floor is { } floor)
        {
            CheckFloor(floor, plan.Caps, problems);
        }

        return problems;
    }

    /// <summary>What is wrong with the place at which a horse is to stand.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="place">The place.</param>
    public static IReadOnlyList<Problem> CheckPlace(PlanVersion plan, PlanPlace place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return place.Step < 0 || place.Step >= plan.Steps.Count
                ? [new("place.step", "step-not-in-plan", Text(place.Step + 1), Text(plan.Steps.Count))]
            : place.Days < 0 || place.Days >= LongestDays
                ? [new("place.days", "days-in-step-out-of-range", Text(place.Days), Text(LongestDays - 1))]
            : [];
    }

    /// <summary>Whether the figures of a work can be: no minutes, outings or days below 0, no more minutes than a day has, and days than a week.</summary>
    /// <param name="work">The work.</param>
    public static bool IsPossible(Work work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.Outing is { Walk: >= 0, Trot: >= 0, Canter: >= 0, Gallop: >= 0 }
            && work.OutingsADay >= 0
            && work.DaysAWeek is >= 0 and <= PlanRows.DaysOfWeek
            && PlanRows.Gaits.Sum(gait => (long)work.Outing.Of(gait)) * work.OutingsADay <= MinutesOfDay;
    }

    private static void CheckStep(PlanVersion plan, int index, List<Problem> problems)
    {
        PlanStep step = plan.Steps[index];
        string field = $"steps[{Text(index)}]";
        if (string.IsNullOrWhiteSpace(step.Name))
        {
            problems.Add(new($"{field}.name", "step-without-name"));
        }

        if (step.ShortestDays is <= 0 or > LongestDays)
        {
            problems.Add(new($"{field}.length", "step-length-out-of-range", Text(step.ShortestDays), Text(LongestDays)));
        }

        if (step.DaysAWeek is < 0 or > PlanRows.DaysOfWeek)
        {
            problems.Add(new($"{field}.daysAWeek", "days-a-week-out-of-range", Text(step.DaysAWeek.Value)));
        }

        if (step.OutingsADay is < 0)
        {
            problems.Add(new($"{field}.outingsADay", "outings-negative", Text(step.OutingsADay.Value)));
        }

        problems.AddRange(
            BookingRules
                .CheckInterval(step.RecheckIntervalDays, Rhythm)
                .Select(problem => problem with { Field = $"{field}.{problem.Field}" })
        );
        foreach (Gait gait in PlanRows.Gaits)
        {
            if (step.Of(gait) is { } rule)
            {
                CheckGait($"{field}.{gait.ToString().ToLowerInvariant()}", rule, problems);
            }
        }

        long[] minutes = [.. PlanRows.Gaits.Select(gait => (long)Math.Max(step.Of(gait)?.Most ?? 0, step.Of(gait)?.Start ?? 0))];
        long outing = minutes.Sum(gait => Math.Max(0, gait));
        if (outing > MinutesOfDay && minutes.Max() <= MinutesOfDay)
        {
            problems.Add(new(field, "outing-over-a-day", Text(outing)));
        }
        else if (outing <= MinutesOfDay && outing * Math.Max(0, step.OutingsADay ?? 0) > MinutesOfDay)
        {
            problems.Add(new(field, "outings-over-a-day", Text(step.OutingsADay!.Value), Text(outing)));
        }

        if (step.Gate is not null && index == plan.Steps.Count - 1)
        {
            problems.Add(new($"{field}.gate", "gate-after-last-step"));
        }
    }

    private static void CheckGait(string field, GaitRule rule, List<Problem> problems)
    {
        if (rule.Start < 0 || rule.GrowthPerWeek < 0 || rule.Ceiling < 0)
        {
            problems.Add(new(field, "minutes-negative", Text(Math.Min(rule.Start, Math.Min(rule.GrowthPerWeek, rule.Ceiling ?? 0)))));
        }

        if (rule.Start > MinutesOfDay || rule.GrowthPerWeek > MinutesOfDay || rule.Ceiling > MinutesOfDay)
        {
            problems.Add(new(field, "minutes-over-a-day", Text(Math.Max(rule.Start, Math.Max(rule.GrowthPerWeek, rule.Ceiling ?? 0)))));
        }

        if (rule.Ceiling < rule.Start)
        {
            problems.Add(new(field, "start-above-ceiling", Text(rule.Start), Text(rule.Ceiling.Value)));
        }

        if (rule.GrowthPerWeek > 0 && rule.Ceiling is null)
        {
            problems.Add(new(field, "growth-without-ceiling", Text(rule.GrowthPerWeek)));
        }
    }

    private static void CheckCap(string field, int? cap, List<Problem> problems, int most)
    {
        if (cap < 0 || cap > most)
        {
            problems.Add(new(field, "cap-out-of-range", Text(cap.Value), Text(most)));
        }
    }

    private static void CheckFloor(Work floor, PlanCaps caps, List<Problem> problems)
    {
        if (!IsPossible(floor))
        {
            problems.Add(new("floor", "floor-out-of-range"));
        }
        else if (floor.Outing.Total > caps.OutingMinutes)
        {
            problems.Add(new("floor", "floor-above-cap", Text(floor.Outing.Total), Text(caps.OutingMinutes.Value)));
        }
        else if (floor.Day.Total > caps.DayMinutes)
        {
            problems.Add(new("floor", "floor-above-cap", Text(floor.Day.Total), Text(caps.DayMinutes.Value)));
        }
        else if (floor.DaysAWeek * floor.Day.Total > caps.WeekMinutes)
        {
            problems.Add(new("floor", "floor-above-cap", Text(floor.DaysAWeek * floor.Day.Total), Text(caps.WeekMinutes.Value)));
        }
    }

    private static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
