namespace RehabTrack.Records.Start;

/// <summary>What a practice of its own begins with; the vet changes it on the practice's page.</summary>
/// <param name="PracticeName">Name of the practice.</param>
/// <param name="VetName">Name of the one local vet.</param>
/// <param name="TimeZone">Time zone, as "Europe/Vienna".</param>
/// <param name="Language">Language, as "en".</param>
public sealed record LocalPractice(string PracticeName, string VetName, string TimeZone, string Language);
