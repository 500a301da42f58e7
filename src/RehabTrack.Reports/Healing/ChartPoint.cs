namespace RehabTrack.Reports.Healing;

/// <summary>Where the point of an examination stands in the drawing.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Date">Its date.</param>
/// <param name="X">From the left edge, in units of the drawing.</param>
/// <param name="Y">From the top edge, in units of the drawing.</param>
/// <param name="Label">What the point says in words.</param>
public sealed record ChartPoint(string ExaminationId, DateOnly Date, double X, double Y, string Label);
