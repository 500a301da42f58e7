using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Records.Examinations;

/// <summary>A row of an examination as entered.</summary>
/// <param name="Id">The row's identity; null for a new row.</param>
/// <param name="Values">What was entered.</param>
public sealed record DraftReading(Guid? Id, ReadingDraft Values);
