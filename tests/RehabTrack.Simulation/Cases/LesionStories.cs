using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Simulation.Cases;

/// <summary>What truly happens to a lesion over five examinations, 60 days apart.</summary>
public static class LesionStories
{
    private const int Looks = 5;
    private const double LongestHalfLife = 160;

    /// <summary>Shrinks with a half-life of at most 160 days towards a floor of up to 8 % of the start.</summary>
    public static CaseCourse Healing(SimulatedLesion lesion)
    {
        ArgumentNullException.ThrowIfNull(lesion);
        double halfLife = lesion.HalfLife(LongestHalfLife);
        double floor = lesion.Floor();
        return lesion.Course(Looks, day => floor + ((1 - floor) * Math.Pow(2, -day / halfLife)));
    }

    /// <summary>Heals until the second examination, then stays.</summary>
    public static CaseCourse Stalling(SimulatedLesion lesion)
    {
        ArgumentNullException.ThrowIfNull(lesion);
        double halfLife = lesion.HalfLife(LongestHalfLife);
        return lesion.Course(Looks, day => Math.Pow(2, -Math.Min(day, 60) / halfLife));
    }

    /// <summary>Heals until the second examination, then grows by 22 % in 60 days.</summary>
    public static CaseCourse Worsening(SimulatedLesion lesion) => Growing(lesion, 1.22);

    /// <summary>Heals until the second examination, then is multiplied by <paramref name="factor"/> in 60 days.</summary>
    public static CaseCourse Growing(SimulatedLesion lesion, double factor)
    {
        ArgumentNullException.ThrowIfNull(lesion);
        double halfLife = lesion.HalfLife(LongestHalfLife);
        return lesion.Course(Looks, day => Math.Pow(2, -Math.Min(day, 60) / halfLife) * Math.Pow(factor, Math.Max(0, day - 60) / 60));
    }

    /// <summary>Never changes.</summary>
    public static CaseCourse Flat(SimulatedLesion lesion)
    {
        ArgumentNullException.ThrowIfNull(lesion);
        return lesion.Course(Looks, _ => 1);
    }
}
