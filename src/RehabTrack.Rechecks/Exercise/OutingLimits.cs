namespace RehabTrack.Rechecks.Exercise;

/// <summary>Lower ceilings that a vet signs with a decision, min of one outing. Null leaves the plan's ceiling.</summary>
/// <param name="Walk">Most walk of an outing, min; null for the plan's.</param>
/// <param name="Trot">Most trot of an outing, min; null for the plan's.</param>
/// <param name="Canter">Most canter of an outing, min; null for the plan's.</param>
/// <param name="Gallop">Most gallop of an outing, min; null for the plan's.</param>
public sealed record OutingLimits(int? Walk = null, int? Trot = null, int? Canter = null, int? Gallop = null)
{
    /// <summary>The minutes with the ceilings put on; none rises.</summary>
    /// <param name="minutes">The plan's minutes.</param>
    public OutingMinutes On(OutingMinutes minutes) =>
        new(
            Math.Min(minutes.Walk, Walk ?? minutes.Walk),
            Math.Min(minutes.Trot, Trot ?? minutes.Trot),
            Math.Min(minutes.Canter, Canter ?? minutes.Canter),
            Math.Min(minutes.Gallop, Gallop ?? minutes.Gallop)
        );
}
