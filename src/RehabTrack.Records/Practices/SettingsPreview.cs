namespace RehabTrack.Records.Practices;

/// <summary>What other settings would do to the open cases.</summary>
/// <param name="Moved">Cases whose verdict would move, by horse.</param>
/// <param name="Staying">How many would keep theirs.</param>
public sealed record SettingsPreview(IReadOnlyList<MovedVerdict> Moved, int Staying);
