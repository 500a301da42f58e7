namespace RehabTrack.Records.People;

/// <summary>A yard.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="Name">Name.</param>
/// <param name="Phone">Telephone; null when not given.</param>
/// <param name="Address">Address; null when not given.</param>
/// <param name="HorseCount">Horses that stand there.</param>
public sealed record YardView(Guid Id, Guid Version, string Name, string? Phone, string? Address, int HorseCount);
