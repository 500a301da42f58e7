namespace RehabTrack.Rechecks.Analysis;

/// <summary>One examination's value, then and today.</summary>
/// <param name="Then">As it was seen.</param>
/// <param name="Today">The same measure at the same examination today; null when today's analysis has none there, or another measure speaks.</param>
public sealed record ValueDifference(SeenValue Then, SeenValue? Today)
{
    /// <summary>Whether today's lies further from then's than then's standard error.</summary>
    public bool IsBeyondError => Today is { } today && Then.DiffersFrom(today.Value);
}
