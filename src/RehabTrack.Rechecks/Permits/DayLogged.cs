namespace RehabTrack.Rechecks.Permits;

/// <summary>A day's exercise was entered in the log. With a sign above none it is a concern as well.</summary>
public sealed record DayLogged : PermitEntry
{
    /// <summary>The log.</summary>
    public required DayLog Log { get; init; }
}
