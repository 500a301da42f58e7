namespace RehabTrack.Rechecks.Repeats;

/// <summary>A subject measured twice: a point of the plot of differences.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Mean">Mean of the two, in the size's unit.</param>
/// <param name="Difference">First less second, in the size's unit.</param>
/// <param name="Measurer">Who measured both; null when two persons did, or nobody is named.</param>
public sealed record AgreementPoint(string Subject, double Mean, double Difference, string? Measurer);
