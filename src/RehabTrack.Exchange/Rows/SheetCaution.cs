using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Rows;

/// <summary>What is worth a second look although it was taken.</summary>
/// <param name="Row">The line of the file; 0 when it concerns the file.</param>
/// <param name="Column">The column, by the name it has in the file; empty when it concerns the whole.</param>
/// <param name="Value">What stands there.</param>
/// <param name="Problem">What to look at.</param>
public sealed record SheetCaution(int Row, string Column, string Value, Problem Problem);
