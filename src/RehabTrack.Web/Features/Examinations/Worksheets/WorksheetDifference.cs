namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>One field or cell that two people changed differently.</summary>
/// <param name="Field">The field above the grid; null for a cell.</param>
/// <param name="RowKey">The row; null for a field above the grid.</param>
/// <param name="Column">The column; null for a field above the grid.</param>
/// <param name="Mine">What was typed here.</param>
/// <param name="Theirs">What the other person saved.</param>
public sealed record WorksheetDifference(HeaderField? Field, string? RowKey, EntryColumn? Column, string Mine, string Theirs);
