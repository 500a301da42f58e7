namespace RehabTrack.Rechecks.Healing;

/// <summary>A severity class with the scale it stands on.</summary>
/// <param name="ScaleId">The scale, as in <c>shared/severity.json</c>: <c>total-percent</c> or <c>branch-section</c>.</param>
/// <param name="Class">1 (mildest) to 3.</param>
public sealed record SeverityGrade(string ScaleId, int Class);
