namespace RehabTrack.Rechecks.Permits;

/// <summary>A case of the horse was closed, by a vet's signature with an outcome. The plan ends with the last case it was signed for.</summary>
public sealed record CaseClosed : PermitEntry
{
    /// <summary>The case.</summary>
    public required string CaseId { get; init; }

    /// <summary>The first day on which it is closed. It counts from the day it was recorded at the earliest.</summary>
    public required DateOnly Date { get; init; }
}
