using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Keeping;

/// <summary>A person beside a horse, from a date until a date.</summary>
internal sealed class HorseLinkRecord : KeptRecord
{
    public Guid HorseId { get; set; }

    public Guid PersonId { get; set; }

    public HorseRelation Relation { get; set; }

    public DateOnly From { get; set; }

    /// <summary>The first day on which it no longer holds; null while it holds.</summary>
    public DateOnly? Until { get; set; }
}
