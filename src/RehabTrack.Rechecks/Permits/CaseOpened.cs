namespace RehabTrack.Rechecks.Permits;

/// <summary>A case of the horse was opened.</summary>
public sealed record CaseOpened : PermitEntry
{
    /// <summary>The case.</summary>
    public required string CaseId { get; init; }

    /// <summary>The day from which it is open.</summary>
    public required DateOnly Date { get; init; }
}
