using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Plans;

/// <summary>
/// A plan as it is typed. Every change is read at once: the plan with what is wrong beside its fields. What cannot be read stays typed and
/// counts as not filled, which permits nothing.
/// </summary>
public sealed class PlanEntry
{
    // With one of these the weeks can still be drawn.
    private static readonly HashSet<string> Drawable = new(StringComparer.Ordinal)
    {
        "growth-without-ceiling",
        "step-without-name",
        "gate-after-last-step",
        "start-above-ceiling",
        "floor-out-of-range",
        "floor-above-cap",
    };

    private readonly List<StepEntry> _steps;
    private EntryNumbers _numbers = new();
    private IReadOnlyList<Problem> _problems = [];

    private PlanEntry(PlanVersion plan)
    {
        Title = plan.Title;
        Template = plan.Template;
        _steps = [.. plan.Steps.Select(StepEntry.Of)];
        CapOuting = EntryNumbers.Text(plan.Caps.OutingMinutes);
        CapDay = EntryNumbers.Text(plan.Caps.DayMinutes);
        CapWeek = EntryNumbers.Text(plan.Caps.WeekMinutes);
        HasFloor = plan.Floor is not null;
        Floor = WorkEntry.Of(plan.Floor ?? Work.None);
        Plan = plan;
        Read();
    }

    /// <summary>Its name.</summary>
    public string? Title { get; set; }

    /// <summary>The template it was copied from; empty for none.</summary>
    public string Template { get; set; }

    /// <summary>The steps in order.</summary>
    public IReadOnlyList<StepEntry> Steps => _steps;

    /// <summary>Most of an outing, min.</summary>
    public string? CapOuting { get; set; }

    /// <summary>Most of a day, min.</summary>
    public string? CapDay { get; set; }

    /// <summary>Most of a week, min.</summary>
    public string? CapWeek { get; set; }

    /// <summary>Whether work for bad days is signed.</summary>
    public bool HasFloor { get; set; }

    /// <summary>The work for bad days.</summary>
    public WorkEntry Floor { get; }

    /// <summary>The plan as it reads now.</summary>
    public PlanVersion Plan { get; private set; }

    /// <summary>How many things keep it from being signed.</summary>
    public int ProblemCount => ReadProblems.Count() + _numbers.Count;

    /// <summary>Whether something that is typed cannot be read, and so cannot be kept.</summary>
    public bool IsUnread => _numbers.Any;

    /// <summary>Whether the weeks can be drawn.</summary>
    public bool CanDraw => Plan.Steps.Count > 0 && _problems.All(problem => Drawable.Contains(problem.Code));

    /// <summary>A plan as fields show it.</summary>
    public static PlanEntry Of(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new PlanEntry(plan);
    }

    /// <summary>The same texts, in steps that keep their places on the page.</summary>
    public PlanEntry Copy()
    {
        PlanEntry copy = new(Empty) { Template = Template };
        foreach (PlanField<PlanEntry> field in PlanFields.OfPlan)
        {
            field.Copy(copy, this);
        }

        copy.Place(_steps.Select(step => step.Copy(step.Key)));
        copy.Read();
        return copy;
    }

    /// <summary>A plan with nothing in it.</summary>
    public static PlanVersion Empty { get; } =
        new()
        {
            Id = "",
            Number = 0,
            Steps = [],
        };

    /// <summary>The field of a step, as problems name it.</summary>
    public static string FieldOf(int step) => $"steps[{step.ToString(CultureInfo.InvariantCulture)}]";

    /// <summary>Reads what is typed.</summary>
    public void Read()
    {
        _numbers = new EntryNumbers();
        Plan = new PlanVersion
        {
            Id = "",
            Number = 0,
            Title = Title?.Trim() ?? "",
            Template = Template,
            Steps = [.. _steps.Select((step, index) => step.Read(_numbers, FieldOf(index)))],
            Caps = new PlanCaps(
                _numbers.Read("caps.outing", CapOuting),
                _numbers.Read("caps.day", CapDay),
                _numbers.Read("caps.week", CapWeek)
            ),
            Floor = HasFloor ? Floor.Read(_numbers, "floor") : null,
        };
        _problems = PlanRules.Check(Plan);
    }

    /// <summary>What is wrong with a field; null when nothing is.</summary>
    public string? For(string field) =>
        _numbers.For(field)
        ?? (
            string.Join(" ", _problems.Where(problem => problem.Field == field).Select(problem => ProblemSentences.Of(problem)))
                is { Length: > 0 } told
                ? told
                : null
        );

    /// <summary>How many things are wrong within a step.</summary>
    public int ProblemsIn(int step) =>
        ReadProblems.Count(problem => problem.Field.StartsWith(FieldOf(step), StringComparison.Ordinal)) + _numbers.CountIn(FieldOf(step));

    // What cannot be read is told as that, and not once more as missing.
    private IEnumerable<Problem> ReadProblems => _problems.Where(problem => _numbers.For(problem.Field) is null);

    /// <summary>An empty step at the end: the one that is there, as after a double press, or a new one.</summary>
    public StepEntry Add()
    {
        if (_steps.LastOrDefault() is { IsBlank: true } last)
        {
            return last;
        }

        StepEntry step = new();
        _steps.Add(step);
        return step;
    }

    /// <summary>Takes a step out.</summary>
    public void Remove(StepEntry step) => _steps.Remove(step);

    /// <summary>Takes these steps instead.</summary>
    public void Place(IEnumerable<StepEntry> steps)
    {
        StepEntry[] placed = [.. steps];
        _steps.Clear();
        _steps.AddRange(placed);
    }

    /// <summary>Moves a step by one place, up or down; at the end it stays.</summary>
    public void Move(StepEntry step, int by)
    {
        int at = _steps.IndexOf(step);
        if (at < 0 || at + by < 0 || at + by >= _steps.Count)
        {
            return;
        }

        (_steps[at], _steps[at + by]) = (_steps[at + by], _steps[at]);
    }
}
