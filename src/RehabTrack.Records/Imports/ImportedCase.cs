namespace RehabTrack.Records.Imports;

/// <summary>A case of a file as it is here.</summary>
/// <param name="Label">The file's name of it.</param>
/// <param name="CaseId">The case.</param>
/// <param name="HorseId">The horse.</param>
public sealed record ImportedCase(string Label, Guid CaseId, Guid HorseId);
