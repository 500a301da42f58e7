namespace RehabTrack.Reports.Exercise;

/// <summary>A vet's own stand-down date; nothing is computed from it.</summary>
/// <param name="From">The day of the treatment or medicine.</param>
/// <param name="Until">The date as the vet set it.</param>
/// <param name="By">The vet.</param>
public sealed record StandDownMark(DateOnly From, DateOnly Until, string By);
