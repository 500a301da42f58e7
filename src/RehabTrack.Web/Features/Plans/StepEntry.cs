using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Web.Components.Exercise;

namespace RehabTrack.Web.Features.Plans;

/// <summary>One step of a plan as it is typed.</summary>
public sealed class StepEntry
{
    /// <summary>Keeps its place on the page when steps move.</summary>
    public Guid Key { get; private init; } = Guid.NewGuid();

    /// <summary>Its name.</summary>
    public string? Name { get; set; }

    /// <summary>Its gaits.</summary>
    public IReadOnlyDictionary<Gait, GaitEntry> Gaits { get; private init; } =
        PlanRows.Gaits.ToDictionary(gait => gait, _ => new GaitEntry());

    /// <summary>Outings a day.</summary>
    public string? Outings { get; set; }

    /// <summary>Days a week.</summary>
    public string? Days { get; set; }

    /// <summary>Shortest length, days.</summary>
    public string? Length { get; set; }

    /// <summary>Days from one recheck to the next in this step.</summary>
    public string? Rechecks { get; set; }

    /// <summary>How.</summary>
    public WorkModes Modes { get; set; }

    /// <summary>Over which ground.</summary>
    public Surfaces Surfaces { get; set; }

    /// <summary>Whether in circles; null is not filled.</summary>
    public Circles? Circles { get; set; }

    /// <summary>How the horse may stand; null is not filled.</summary>
    public Turnout? Turnout { get; set; }

    /// <summary>Whether a recheck stands before the next step.</summary>
    public bool HasGate { get; set; }

    /// <summary>What must be true to go up.</summary>
    public string? Criteria { get; set; }

    /// <summary>The rules that must suggest it.</summary>
    public HashSet<RuleCode> Rules { get; private init; } = [];

    /// <summary>A word beside the step, for the practice.</summary>
    public string? Note { get; set; }

    /// <summary>Whether nothing is typed or chosen.</summary>
    public bool IsBlank =>
        new[] { Name, Outings, Days, Length, Rechecks, Criteria, Note }.All(string.IsNullOrWhiteSpace)
        && Gaits.Values.All(gait => gait.IsBlank)
        && this is { Modes: WorkModes.None, Surfaces: Surfaces.None, Circles: null, Turnout: null, HasGate: false, Rules.Count: 0 };

    /// <summary>A step as fields show it.</summary>
    public static StepEntry Of(PlanStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return new StepEntry
        {
            Name = step.Name,
            Gaits = PlanRows.Gaits.ToDictionary(gait => gait, gait => GaitEntry.Of(step.Of(gait))),
            Outings = EntryNumbers.Text(step.OutingsADay),
            Days = EntryNumbers.Text(step.DaysAWeek),
            Length = step.ShortestDays == 0 ? null : EntryNumbers.Text(step.ShortestDays),
            Rechecks = EntryNumbers.Text(step.RecheckIntervalDays),
            Modes = step.Modes,
            Surfaces = step.Surfaces,
            Circles = step.Circles,
            Turnout = step.Turnout,
            HasGate = step.Gate is not null,
            Criteria = step.Gate?.Criteria,
            Rules = [.. step.Gate?.Rules ?? []],
            Note = step.Note,
        };
    }

    /// <summary>The same texts beside the same or another place on the page.</summary>
    /// <param name="key">The place.</param>
    public StepEntry Copy(Guid key)
    {
        StepEntry copy = new() { Key = key };
        foreach (PlanField<StepEntry> field in PlanFields.OfStep)
        {
            field.Copy(copy, this);
        }

        return copy;
    }

    /// <summary>The step.</summary>
    /// <param name="numbers">Takes what cannot be read.</param>
    /// <param name="field">The field of the step, as problems name it: <c>steps[0]</c>.</param>
    public PlanStep Read(EntryNumbers numbers, string field)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        GaitRule? Rule(Gait gait) => Gaits[gait].Read(numbers, $"{field}.{gait.ToString().ToLowerInvariant()}");
        return new PlanStep
        {
            Name = Name?.Trim() ?? "",
            Walk = Rule(Gait.Walk),
            Trot = Rule(Gait.Trot),
            Canter = Rule(Gait.Canter),
            Gallop = Rule(Gait.Gallop),
            OutingsADay = numbers.Read($"{field}.outingsADay", Outings),
            DaysAWeek = numbers.Read($"{field}.daysAWeek", Days),
            Modes = Modes,
            Circles = Circles,
            Surfaces = Surfaces,
            Turnout = Turnout,
            ShortestDays = numbers.Read($"{field}.length", Length) ?? 0,
            RecheckIntervalDays = numbers.Read($"{field}.recheckIntervalDays", Rechecks),
            Gate = HasGate ? new Gate(Criteria?.Trim() ?? "", [.. Rules.Order()]) : null,
            Note = Note?.Trim() ?? "",
        };
    }
}
