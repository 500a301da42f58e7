namespace RehabTrack.Records.Horses;

/// <summary>A horse with all that belongs to it. Those who do not work here see name and yard only.</summary>
public sealed record HorseView
{
    /// <summary>Identity.</summary>
    public required Guid Id { get; init; }

    /// <summary>Version token.</summary>
    public required Guid Version { get; init; }

    /// <summary>Name.</summary>
    public required string Name { get; init; }

    /// <summary>Chip or life number.</summary>
    public required string? Microchip { get; init; }

    /// <summary>Year of birth.</summary>
    public required int? BirthYear { get; init; }

    /// <summary>Date of birth, where known to the day.</summary>
    public required DateOnly? BirthDate { get; init; }

    /// <summary>Sex.</summary>
    public required Sex? Sex { get; init; }

    /// <summary>What it is used for.</summary>
    public required string? Use { get; init; }

    /// <summary>Colour and markings.</summary>
    public required string? Markings { get; init; }

    /// <summary>The yard it stands in.</summary>
    public required Guid? YardId { get; init; }

    /// <summary>The yard's name.</summary>
    public required string? Yard { get; init; }

    /// <summary>The yard's telephone.</summary>
    public required string? YardPhone { get; init; }

    /// <summary>The people beside it today.</summary>
    public required IReadOnlyList<HorsePersonView> People { get; init; }

    /// <summary>Whether there is a photo.</summary>
    public required bool HasPhoto { get; init; }

    /// <summary>Whether it was put away.</summary>
    public required bool Archived { get; init; }

    /// <summary>Its cases, open ones first.</summary>
    public required IReadOnlyList<CaseRow> Cases { get; init; }

    /// <summary>Its owner.</summary>
    public HorsePersonView? Owner => HorsePeople.First(People, HorseRelation.Owner);

    /// <summary>Its trainer.</summary>
    public HorsePersonView? Trainer => HorsePeople.First(People, HorseRelation.Trainer);

    /// <summary>The vet who sent it.</summary>
    public HorsePersonView? ReferringVet => HorsePeople.First(People, HorseRelation.ReferringVet);
}
