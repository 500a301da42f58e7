namespace RehabTrack.Records.Imports;

/// <summary>A horse here that may be the one of a file.</summary>
/// <param name="HorseId">The horse.</param>
/// <param name="Name">Its name.</param>
/// <param name="Microchip">Its chip or life number.</param>
/// <param name="BirthYear">Its year of birth.</param>
/// <param name="Likeness">In what they are alike.</param>
public sealed record HorseCandidate(Guid HorseId, string Name, string? Microchip, int? BirthYear, HorseLikeness Likeness);
