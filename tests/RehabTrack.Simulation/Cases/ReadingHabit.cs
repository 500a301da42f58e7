namespace RehabTrack.Simulation.Cases;

/// <summary>How the levels of a simulated lesion are read.</summary>
/// <param name="Missed">Chance that a place is left out at an examination.</param>
/// <param name="TapeCm">SD of one tape reading.</param>
/// <param name="ShiftCm">Largest shift of a whole examination, uniform either way.</param>
public sealed record ReadingHabit(double Missed = 0, double TapeCm = 0, double ShiftCm = 0)
{
    /// <summary>SD of the log ligament area between places, as in the linking regimes.</summary>
    public double PlaceLogSpread { get; init; } = 0.2;

    /// <summary>The true error over the assumed one.</summary>
    public double ErrorFactor { get; init; } = 1;

    /// <summary>The tape as it is: 0.7 cm a reading, up to 1 cm a whole examination.</summary>
    public static ReadingHabit OnTheTape(double missed) => new(missed, 0.7, 1);
}
