namespace RehabTrack.Rechecks.Permits;

/// <summary>A vet of the practice signed an examination. Drafts are not told; an imported or outside one passes no gate.</summary>
public sealed record ExaminationSigned : PermitEntry
{
    /// <summary>The case.</summary>
    public required string CaseId { get; init; }

    /// <summary>The day of the examination.</summary>
    public required DateOnly Date { get; init; }
}
