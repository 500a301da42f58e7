namespace RehabTrack.Records.Keeping;

/// <summary>A table that was read from end to end.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Rows">Rows that were read.</param>
/// <param name="Unreadable">Rows that hold what the program cannot read, and why.</param>
/// <param name="Spoiled">Rows that keep a file whose checksum is another one.</param>
internal sealed record KeptTable(string Name, long Rows, IReadOnlyList<(string Id, string Why)> Unreadable, IReadOnlyList<string> Spoiled);
