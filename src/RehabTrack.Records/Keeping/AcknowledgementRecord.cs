using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Records.Keeping;

/// <summary>Somebody of the practice has acknowledged what stands, as it was then. It is never changed and lifts nothing.</summary>
internal sealed class AcknowledgementRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    /// <summary>The case on whose page it was acknowledged.</summary>
    public Guid CaseId { get; set; }

    /// <summary>What stands, by the name of its code; of an analysis the code of the finding.</summary>
    public required string Finding { get; set; }

    /// <summary>Which occurrence.</summary>
    public required string FindingKey { get; set; }

    public FindingSeverity Severity { get; set; }

    public int Weight { get; set; }

    public DateOnly Since { get; set; }

    public required string Reason { get; set; }

    public Guid SaidById { get; set; }

    public DateTime SaidAt { get; set; }
}
