namespace RehabTrack.Simulation.Cases;

/// <summary>How a simulated ligament is read.</summary>
/// <param name="SpacingCm">Distance between neighbouring true places.</param>
/// <param name="Missed">Chance that a place is left out at an examination.</param>
/// <param name="Added">Chance, a place, of one more level that is no lasting place.</param>
/// <param name="GrowthFromThird">Factor of the lesion from one examination to the next, from the third on; null lets it heal.</param>
public sealed record SimulatedRegime(double SpacingCm, double Missed, double Added, double? GrowthFromThird = null)
{
    /// <summary>Whether areas are given.</summary>
    public bool Areas { get; init; } = true;

    /// <summary>Whether the ligament area runs smoothly along the limb instead of differing from place to place.</summary>
    public bool SmoothAreas { get; init; }

    /// <summary>Whether a place without lesion shows one of 0.3 cm² from the third examination on.</summary>
    public bool NewLesion { get; init; }

    /// <summary>Factor of the ligament area at one place from the third examination on.</summary>
    public double Swelling { get; init; } = 1;

    /// <summary>Number of examinations.</summary>
    public int Examinations { get; init; } = 5;
}
