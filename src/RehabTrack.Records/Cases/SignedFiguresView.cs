using RehabTrack.Rechecks.Analysis;

namespace RehabTrack.Records.Cases;

/// <summary>What a person saw when signing an examination.</summary>
/// <param name="Id">Identity.</param>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Number">The version of the examination that was signed: 1 for the first, higher when it was amended.</param>
/// <param name="At">When, UTC.</param>
/// <param name="By">Who.</param>
/// <param name="Figures">What the analysis said.</param>
public sealed record SignedFiguresView(Guid Id, Guid ExaminationId, int Number, DateTime At, string By, SeenFigures Figures);
