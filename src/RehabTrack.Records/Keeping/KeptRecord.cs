namespace RehabTrack.Records.Keeping;

/// <summary>What every record carries.</summary>
internal abstract class KeptRecord
{
    /// <summary>Opaque, sortable by the moment of its making (Guid v7).</summary>
    public Guid Id { get; set; }

    /// <summary>The practice it belongs to; no other practice ever sees it.</summary>
    public Guid PracticeId { get; set; }

    /// <summary>A token renewed by every write.</summary>
    public Guid Version { get; set; }

    /// <summary>When it was put away; null while it counts.</summary>
    public DateTime? ArchivedAt { get; set; }
}
