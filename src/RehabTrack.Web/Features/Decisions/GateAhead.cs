using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Decisions;

/// <summary>The gate that ends the stretch in which a horse stands.</summary>
/// <param name="Gate">The gate.</param>
/// <param name="After">The step before it, with its number.</param>
/// <param name="Permit">Today's permit.</param>
public sealed record GateAhead(Gate Gate, string After, Permit Permit)
{
    /// <summary>The step up that the gate's rules speak of.</summary>
    public AskedStep Asked => Gate.Rules.Count == 0 ? AskedStep.More : Gate.Rules.Select(GateRules.AskedOf).Max();

    /// <summary>When it comes.</summary>
    public string When =>
        Permit switch
        {
            { Due: { } due, IsGateDue: true } => Say(DecisionPage.NextGateOn, Figures.Date(due)),
            { Due: { } due } => Say(DecisionPage.NextGateLater, Figures.Date(due)),
            _ => Say(DecisionPage.NextGateOpen),
        };

    /// <summary>The gate ahead; null without a signed plan, or where its last stretch has begun.</summary>
    /// <param name="view">The exercise of the horse.</param>
    public static GateAhead? Of(ExerciseView? view)
    {
        if (view is not { Plan.Plan: { } plan })
        {
            return null;
        }

        PlanPlace place =
            view.Today.Source is { } source && string.Equals(source.PlanVersionId, plan.Id, StringComparison.Ordinal)
                ? source.Place
                : PlanPlace.Start;
        int last = PlanRows.LastOfStretch(plan, place.Step);
        return plan.Steps[last].Gate is { } gate ? new GateAhead(gate, PlanWords.Step(plan, last), view.Today) : null;
    }

    private string Say(string text, string? date = null) => string.Format(TextCulture.Default, text, After, date);
}
