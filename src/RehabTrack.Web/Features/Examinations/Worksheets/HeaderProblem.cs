using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A problem at a field above the grid.</summary>
public sealed record HeaderProblem(HeaderField Field, Problem Problem);
