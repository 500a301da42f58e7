namespace RehabTrack.Rechecks.Care;

/// <summary>An examination soon after an injection into its lesion.</summary>
/// <param name="ExaminationId">The examination.</param>
/// <param name="Date">Its date.</param>
/// <param name="Injected">The day of the injection, the latest before it.</param>
/// <param name="Days">Days between, at least 0.</param>
public sealed record InjectionMark(string ExaminationId, DateOnly Date, DateOnly Injected, int Days);
