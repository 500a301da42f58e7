namespace RehabTrack.Records.Repeats;

/// <summary>What another error would do to the open cases.</summary>
/// <param name="Moved">Cases whose verdict would move, by horse.</param>
/// <param name="Staying">How many would keep theirs.</param>
public sealed record ErrorPreview(IReadOnlyList<MovedVerdict> Moved, int Staying);
