using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>A horse as it shall be.</summary>
public sealed record SaveHorseInput : ICommand
{
    /// <inheritdoc />
    public required Guid CommandId { get; init; }

    /// <summary>The horse to change; null for a new one.</summary>
    public Guid? Id { get; init; }

    /// <summary>The version that was read; null for a new horse.</summary>
    public Guid? Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>The 15 digits of the chip (ISO 11784), or the 15 characters of the life number.</summary>
    public string? Microchip { get; init; }

    /// <summary>Year of birth.</summary>
    public int? BirthYear { get; init; }

    /// <summary>Date of birth, where known to the day; its year must be the year of birth.</summary>
    public DateOnly? BirthDate { get; init; }

    /// <summary>Sex.</summary>
    public Sex? Sex { get; init; }

    /// <summary>What it is used for.</summary>
    public string? Use { get; init; }

    /// <summary>Colour and markings.</summary>
    public string? Markings { get; init; }

    /// <summary>The yard it stands in.</summary>
    public Guid? YardId { get; init; }

    /// <summary>Its owner.</summary>
    public Guid? OwnerId { get; init; }

    /// <summary>Its trainer.</summary>
    public Guid? TrainerId { get; init; }

    /// <summary>The vet who sent it.</summary>
    public Guid? ReferringVetId { get; init; }
}
