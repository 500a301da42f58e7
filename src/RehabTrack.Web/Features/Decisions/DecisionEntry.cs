using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Exercise;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>A decision as it is typed.</summary>
public sealed class DecisionEntry
{
    private readonly Dictionary<Gait, string?> _limits = [];
    private readonly PlanVersion _plan;
    private readonly PlanPlace _now;
    private readonly bool _isGateDue;
    private EntryNumbers _numbers = new();

    /// <summary>A decision on the plan in force, with nothing chosen yet.</summary>
    /// <param name="view">The exercise of the horse; it has a signed plan.</param>
    public DecisionEntry(ExerciseView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        _plan = view.Plan!.Plan;
        _now = view.Today.Source is { } source && source.PlanVersionId == _plan.Id ? source.Place : PlanPlace.Start;
        _isGateDue = view.Today is { IsGateDue: true } today && today.Due <= view.Practice.Today;
        From = view.Practice.Today;
        Recheck = view.Practice.Today.AddDays(view.Practice.RecheckIntervalDays);
        Floor = WorkEntry.Of(_plan.Floor ?? Work.None);
    }

    /// <summary>What is decided; null until one is chosen.</summary>
    public DecisionKind? Kind { get; private set; }

    /// <summary>The first day.</summary>
    public DateOnly? From { get; set; }

    /// <summary>The step at which the horse is placed, from 0.</summary>
    public int? Step { get; set; }

    /// <summary>Days already spent in the step.</summary>
    public string? Days { get; set; }

    /// <summary>The last day of the signature, or of the pause.</summary>
    public DateOnly? ValidUntil { get; set; }

    /// <summary>When the horse is to be seen again.</summary>
    public DateOnly? Recheck { get; set; }

    /// <summary>Whether other work for bad days is signed.</summary>
    public bool HasFloor { get; set; }

    /// <summary>The work for bad days.</summary>
    public WorkEntry Floor { get; }

    /// <summary>Why.</summary>
    public string? Reason { get; set; }

    /// <summary>Why otherwise than suggested.</summary>
    public string? Disagreement { get; set; }

    /// <summary>The earlier decision that it corrects; null for none.</summary>
    public Guid? Corrects { get; set; }

    /// <summary>Whether the kind places the horse.</summary>
    public bool Places => Kind is DecisionKind.Advance or DecisionKind.StepBack;

    /// <summary>Whether ceilings, a recheck and work for bad days belong to the kind.</summary>
    public bool HasWork => Kind is DecisionKind.Advance or DecisionKind.StepBack or DecisionKind.Hold;

    /// <summary>A lower ceiling of a gait, min.</summary>
    public string? this[Gait gait]
    {
        get => _limits.GetValueOrDefault(gait);
        set => _limits[gait] = value;
    }

    /// <summary>Whether something typed cannot be read.</summary>
    public bool IsUnread => _numbers.Any;

    /// <summary>What cannot be read of a field; null when nothing.</summary>
    public string? For(string field) => _numbers.For(field);

    /// <summary>Chooses a kind, and puts the horse where that kind would most often put it.</summary>
    public void Choose(DecisionKind kind)
    {
        Kind = kind;
        PlanPlace place = kind switch
        {
            DecisionKind.Advance when _isGateDue && _now.Step < _plan.Steps.Count - 1 => new PlanPlace(_now.Step + 1, 0),
            DecisionKind.StepBack when _now.Days == 0 && _now.Step > 0 => new PlanPlace(_now.Step - 1, 0),
            DecisionKind.StepBack => new PlanPlace(_now.Step, 0),
            _ => _now,
        };
        (Step, Days) = (place.Step, EntryNumbers.Text(place.Days));
    }

    /// <summary>The decision as it reads now; null until a kind is chosen.</summary>
    public Decision? Read()
    {
        _numbers = new EntryNumbers();
        if (Kind is not { } kind || From is not { } from)
        {
            return null;
        }

        int? days = _numbers.Read("place.days", Days);
        int? Limit(Gait gait) => _numbers.Read("limits", this[gait]);
        OutingLimits limits = new(Limit(Gait.Walk), Limit(Gait.Trot), Limit(Gait.Canter), Limit(Gait.Gallop));
        Work? floor = HasFloor && HasWork ? Floor.Read(_numbers, "floor") : null;
        return new Decision
        {
            Kind = kind,
            PlanVersionId = _plan.Id,
            From = from,
            Place = Places && Step is { } step && days is { } inStep ? new PlanPlace(step, inStep) : null,
            Limits = HasWork && limits != new OutingLimits() ? limits : null,
            ValidUntil = HasWork || kind == DecisionKind.Pause ? ValidUntil : null,
            RecheckDate = kind == DecisionKind.Close ? null : Recheck,
            Floor = floor,
            Reason = Reason?.Trim() ?? "",
        };
    }

    /// <summary>Whether a kind is another answer than what the rules suggest. A pause or an end answers no rule.</summary>
    public static bool Differs(DecisionKind? kind, SuggestedMove? suggested) =>
        suggested is { } move
        && kind switch
        {
            DecisionKind.Advance => move != SuggestedMove.Advance,
            DecisionKind.Hold => move != SuggestedMove.Hold,
            DecisionKind.StepBack => move != SuggestedMove.StepBack,
            DecisionKind.Stop => move != SuggestedMove.Stop,
            _ => false,
        };
}
