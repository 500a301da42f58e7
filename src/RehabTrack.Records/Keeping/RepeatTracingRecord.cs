using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;

namespace RehabTrack.Records.Keeping;

/// <summary>One repeat tracing of the practice's own study of its error.</summary>
internal sealed class RepeatTracingRecord : KeptRecord
{
    public required string Subject { get; set; }

    public RepeatKind Kind { get; set; }

    public MeasuredSize Size { get; set; }

    public string? Measurer { get; set; }

    /// <summary>In the size's unit, cm² or cm.</summary>
    public double Value { get; set; }

    public Guid EnteredById { get; set; }

    public DateTime EnteredAt { get; set; }
}
