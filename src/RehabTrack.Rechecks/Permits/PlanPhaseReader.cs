using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>Which phase of the plan a course was in: a lesion is held against the rate of the work that was allowed before it was looked at.</summary>
public static class PlanPhaseReader
{
    /// <summary>
    /// The days from which another phase counts, in order; empty when nothing was ever signed. A phase counts from the day after it was
    /// permitted, so that what a vet signs at a visit says nothing of the examination made there.
    /// </summary>
    /// <param name="permits">The permits of successive days.</param>
    public static IReadOnlyList<PlanPhaseStart> Of(IEnumerable<Permit> permits)
    {
        ArgumentNullException.ThrowIfNull(permits);
        List<PlanPhaseStart> starts = [];
        foreach (Permit permit in permits.Where(permit => permit.State != PermitState.NothingSigned))
        {
            PlanPhase phase = PhaseOf(permit.BeforeWeek.Outing);
            if (starts.Count == 0 || starts[^1].Phase != phase)
            {
                starts.Add(new PlanPhaseStart(permit.Date.AddDays(1), phase));
            }
        }

        return starts;
    }

    private static PlanPhase PhaseOf(OutingMinutes outing) =>
        outing.Canter > 0 || outing.Gallop > 0 ? PlanPhase.CanterOrGallop
        : outing.Trot > 0 ? PlanPhase.Trot
        : PlanPhase.Walk;
}
