using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Examinations;

/// <summary>A row of an examination as entered.</summary>
/// <param name="Id">The row's identity; a new row brings its own, or null and gets one.</param>
/// <param name="Values">What was entered.</param>
public sealed record DraftReading(Guid? Id, ReadingDraft Values);
