namespace RehabTrack.Records.Start;

/// <summary>What the practice of the demo did itself of a case.</summary>
/// <param name="Label">The label in the import file.</param>
/// <param name="ResponsibleVet">The vet, by key.</param>
/// <param name="FirstDiagnosis">When it was first diagnosed.</param>
/// <param name="SignedFrom">Examinations from this date on were entered and signed here; null when all are history.</param>
public sealed record DemoCase(string Label, string ResponsibleVet, DateOnly? FirstDiagnosis, DateOnly? SignedFrom);
