using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Start;

/// <summary>A horse of the demo; people and yard by their keys.</summary>
/// <param name="Name">Name.</param>
/// <param name="Microchip">Chip.</param>
/// <param name="BirthYear">Year of birth.</param>
/// <param name="Sex">Sex.</param>
/// <param name="Use">Use.</param>
/// <param name="Markings">Colour and markings.</param>
/// <param name="Owner">Owner.</param>
/// <param name="Trainer">Trainer.</param>
/// <param name="ReferringVet">The vet who sent it.</param>
/// <param name="Yard">Yard.</param>
public sealed record DemoHorse(
    string Name,
    string? Microchip,
    int? BirthYear,
    Sex? Sex,
    string? Use,
    string? Markings,
    string? Owner,
    string? Trainer,
    string? ReferringVet,
    string? Yard
);
