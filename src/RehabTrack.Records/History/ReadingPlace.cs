using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Records.History;

/// <summary>Where a reading stands.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Parts">The parts of the ligament that are meant.</param>
/// <param name="LevelCm">The level, cm on the tape; null when it is a zone.</param>
/// <param name="Zone">The zone's name; null on a tape.</param>
public sealed record ReadingPlace(Guid ExaminationId, IReadOnlyList<Part> Parts, double? LevelCm, string? Zone);
