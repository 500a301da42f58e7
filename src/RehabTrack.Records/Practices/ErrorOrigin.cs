namespace RehabTrack.Records.Practices;

/// <summary>Where a cv of the practice comes from, when it comes from its own repeats.</summary>
/// <param name="Cv">The cv that was taken.</param>
/// <param name="Subjects">Subjects measured more than once.</param>
/// <param name="DegreesOfFreedom">What it rests on.</param>
/// <param name="TakenOn">The practice's date when it was taken.</param>
/// <param name="TakenBy">Who took it.</param>
public sealed record ErrorOrigin(double Cv, int Subjects, int DegreesOfFreedom, DateOnly TakenOn, string TakenBy);
