using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Rechecks.Exams;

/// <summary>Names one place of one examination: all readings at one level of one path.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Path">The path.</param>
/// <param name="Level">The level on that day's tape, or the zone.</param>
public readonly record struct PlaceKey(string ExaminationId, LinkPath Path, Level Level);
