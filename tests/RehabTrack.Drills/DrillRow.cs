namespace RehabTrack.Drills;

/// <summary>What a drill found.</summary>
/// <param name="Drill">What was done.</param>
/// <param name="Rounds">How often.</param>
/// <param name="Seen">What was counted or measured on the way.</param>
/// <param name="Lost">Everything that was lost, torn or not told, each with words.</param>
internal sealed record DrillRow(string Drill, int Rounds, string Seen, IReadOnlyList<string> Lost);
