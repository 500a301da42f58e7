namespace RehabTrack.Rechecks.Exams;

/// <summary>By what a file names a horse.</summary>
/// <param name="Name">The horse's name; null when the file gives none.</param>
/// <param name="Microchip">The 15 digits of the chip (ISO 11784) or the life number; null when not given.</param>
/// <param name="BirthDate">Date of birth; null when not given.</param>
public sealed record HorseIdentity(string? Name, string? Microchip, DateOnly? BirthDate);
