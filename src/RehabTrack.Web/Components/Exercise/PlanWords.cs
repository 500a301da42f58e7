using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>The rows of a plan in words.</summary>
public static class PlanWords
{
    /// <summary>The modes, least first.</summary>
    public static IReadOnlyList<WorkModes> Modes { get; } = [.. Enum.GetValues<WorkModes>().Where(mode => mode != WorkModes.None)];

    /// <summary>The grounds.</summary>
    public static IReadOnlyList<Surfaces> Grounds { get; } = [.. Enum.GetValues<Surfaces>().Where(surface => surface != Surfaces.None)];

    /// <summary>The step with its number, as "2. first trot".</summary>
    public static string Step(PlanVersion plan, int index)
    {
        ArgumentNullException.ThrowIfNull(plan);
        string name = plan.Steps[index].Name;
        return string.Format(
            TextCulture.Default,
            ExerciseTexts.NumberedStep,
            Text(index + 1),
            string.IsNullOrWhiteSpace(name) ? ExerciseTexts.NoName : name
        );
    }

    /// <summary>A gait's rule, as "10 min, +5 a week to 40 min"; null when not filled.</summary>
    public static string? Rule(GaitRule? rule) =>
        rule switch
        {
            null => null,
            { GrowthPerWeek: > 0, Ceiling: { } most } => Filled(ExerciseTexts.Rising, rule.Start, rule.GrowthPerWeek, most),
            { GrowthPerWeek: > 0 } => Filled(ExerciseTexts.RisingOpen, rule.Start, rule.GrowthPerWeek),
            _ => Filled(ExerciseTexts.Fixed, rule.Start),
        };

    /// <summary>The gaits of a step that are more than 0, in one line: "walk 10 min, +5 a week to 40 min · trot 5 min".</summary>
    public static string Gaits(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        string[] told =
        [
            .. PlanRows
                .Gaits.Where(gait => step.Of(gait) is not { Start: 0, GrowthPerWeek: 0 })
                .Select(gait => $"{Names.Of(gait)} {Rule(step.Of(gait)) ?? ExerciseTexts.NotFilled}"),
        ];
        return told.Length == 0 ? PermitSentences.Outing(default) : string.Join(" · ", told);
    }

    /// <summary>How often, as "twice a day, 6 days a week"; null when not filled.</summary>
    public static string? HowOften(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step is { OutingsADay: { } outings, DaysAWeek: { } days }
            ? string.Format(TextCulture.Default, ExerciseTexts.Often, Text(outings), Text(days))
            : null;
    }

    /// <summary>The gaits that a plan uses: one that no step ever uses takes no column.</summary>
    public static IReadOnlyList<Gait> GaitsOf(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
        [
            .. PlanRows.Gaits.Where(gait =>
                gait == Gait.Walk || plan.Steps.Any(step => step.Of(gait) is not { Start: 0, GrowthPerWeek: 0 })
            ),
        ];
    }

    /// <summary>How and where a step is worked; null when not filled.</summary>
    public static string? Where(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step is { OutingsADay: 0 } ? "–"
            : step.Modes == WorkModes.None || step.Surfaces == Surfaces.None ? null
            : $"{Of(step.Modes)}; {Names.Of(step.Circles ?? Circles.None)}; {Of(step.Surfaces)}";
    }

    /// <summary>How often a step wants rechecks; null when it says nothing.</summary>
    public static string? RecheckEvery(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.RecheckIntervalDays is { } days ? Filled(ExerciseTexts.RecheckEvery, days) : null;
    }

    /// <summary>The rules that a gate asks for; null without any.</summary>
    /// <param name="gate">The gate.</param>
    /// <param name="rules">The practice's rules, whose numbers their sentences name.</param>
    public static string? GateRules(Gate gate, RuleSettings rules)
    {
        ArgumentNullException.ThrowIfNull(gate);
        return gate.Rules.Count == 0
            ? null
            : string.Format(
                TextCulture.Default,
                ExerciseTexts.GateRules,
                string.Join(" ", gate.Rules.Select(code => SuggestionSentences.Of(RuleTable.Of(code), rules)))
            );
    }

    /// <summary>The work for bad days, or that the plan has none.</summary>
    public static string Floor(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Floor is { } floor ? string.Format(TextCulture.Default, ExerciseTexts.FloorSays, Line(floor)) : ExerciseTexts.NoFloor;
    }

    /// <summary>A set of modes, as "in hand, ridden"; null when empty.</summary>
    public static string? Of(WorkModes modes) => Joined(Modes.Where(mode => modes.HasFlag(mode)).Select(mode => Names.Of(mode)));

    /// <summary>A set of grounds; null when empty.</summary>
    public static string? Of(Surfaces surfaces) =>
        Joined(Grounds.Where(surface => surfaces.HasFlag(surface)).Select(surface => Names.Of(surface)));

    /// <summary>The caps in a sentence; null without any.</summary>
    public static string? Caps(PlanCaps caps)
    {
        ArgumentNullException.ThrowIfNull(caps);
        (string Text, int? Cap)[] all =
        [
            (ExerciseTexts.CapOuting, caps.OutingMinutes),
            (ExerciseTexts.CapDay, caps.DayMinutes),
            (ExerciseTexts.CapWeek, caps.WeekMinutes),
        ];
        return Joined(all.Where(one => one.Cap is not null).Select(one => Filled(one.Text, one.Cap!.Value))) is { } told
            ? string.Format(TextCulture.Default, ExerciseTexts.Caps, told)
            : null;
    }

    /// <summary>Work in one line: outing, how often, how and where.</summary>
    public static string Line(Work work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.HasOuting
            ? $"{PermitSentences.Outing(work.Outing)}; {PermitSentences.HowOften(work)}; {PermitSentences.HowAndWhere(work)}"
            : PermitSentences.Outing(default);
    }

    private static string? Joined(IEnumerable<string> parts) => string.Join(", ", parts) is { Length: > 0 } told ? told : null;

    private static string Filled(string text, params ReadOnlySpan<int> numbers) =>
        string.Format(TextCulture.Default, text, [.. numbers.ToArray().Select(Text)]);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
