using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Exchange.Rows;

/// <summary>Why a row is not taken. A row with several problems stands here several times.</summary>
/// <param name="Row">The line of the file on which the row starts.</param>
/// <param name="Column">The column, by the name it has in the file; empty when it concerns the whole row.</param>
/// <param name="Value">What stands there.</param>
/// <param name="Problem">What is wrong.</param>
public sealed record RejectedRow(int Row, string Column, string Value, Problem Problem);
