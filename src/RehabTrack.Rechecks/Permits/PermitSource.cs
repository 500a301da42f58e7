using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>Which signed row a permit comes from.</summary>
/// <param name="PlanVersionId">The plan version.</param>
/// <param name="PlanNumber">Its number.</param>
/// <param name="Place">Where the horse stands in it by effective time.</param>
/// <param name="SignedPlace">Where the signature would have it by now had no day been lost.</param>
/// <param name="StepName">The name of the step.</param>
/// <param name="SignedOn">The day from which the signature counts that placed the horse.</param>
public sealed record PermitSource(
    string PlanVersionId,
    int PlanNumber,
    PlanPlace Place,
    PlanPlace SignedPlace,
    string StepName,
    DateOnly SignedOn
);
