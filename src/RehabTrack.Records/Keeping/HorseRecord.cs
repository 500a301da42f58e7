using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Keeping;

internal sealed class HorseRecord : KeptRecord
{
    public required string Name { get; set; }

    public required string FoldedName { get; set; }

    /// <summary>Folded name and chip: what a search looks into.</summary>
    public required string Search { get; set; }

    /// <summary>The 15 digits of the chip, or the life number.</summary>
    public string? Microchip { get; set; }

    public int? BirthYear { get; set; }

    public DateOnly? BirthDate { get; set; }

    public Sex? Sex { get; set; }

    public string? Use { get; set; }

    public string? Markings { get; set; }

    public Guid? YardId { get; set; }

    /// <summary>The photo kept beside it; null without one.</summary>
    public Guid? PhotoId { get; set; }
}
