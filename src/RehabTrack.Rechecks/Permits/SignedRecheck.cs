namespace RehabTrack.Rechecks.Permits;

/// <summary>The next recheck that the signatures of a horse ask for.</summary>
/// <param name="Due">The day on which growth stops for it; null when none was signed for.</param>
/// <param name="IsGate">Whether a gate sets that day; otherwise a vet named it, or it is the end of the interval signed with a step.</param>
/// <param name="IntervalDays">
/// The shortest interval between rechecks, in days, that the steps name from the one in which the last signature placed the horse to the
/// one in which it would stand had no day been lost; null when none of them names one. The step in which the horse really stands is one
/// of these, so that its interval is never overlooked.
/// </param>
public sealed record SignedRecheck(DateOnly? Due, bool IsGate, int? IntervalDays)
{
    /// <summary>Nothing signed asks for a recheck.</summary>
    public static SignedRecheck None { get; } = new(null, false, null);
}
