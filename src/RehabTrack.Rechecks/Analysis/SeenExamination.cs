namespace RehabTrack.Rechecks.Analysis;

/// <summary>An examination that the figures rest on.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Date">Its date.</param>
/// <param name="Fingerprint"><see cref="InputHash.OfExamination"/>: another one says that it was amended.</param>
public sealed record SeenExamination(string ExaminationId, DateOnly Date, string Fingerprint);
