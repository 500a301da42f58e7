using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A problem at a cell of the grid.</summary>
public sealed record CellProblem(string RowKey, EntryColumn Column, Problem Problem);
