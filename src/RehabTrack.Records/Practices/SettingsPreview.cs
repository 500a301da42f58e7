namespace RehabTrack.Records.Practices;

/// <summary>What other settings would do to the open cases.</summary>
/// <param name="Moved">Verdicts that would move, by horse: of the case, and of each lesion of a case that has several.</param>
/// <param name="Staying">How many verdicts would stay.</param>
public sealed record SettingsPreview(IReadOnlyList<MovedVerdict> Moved, int Staying);
