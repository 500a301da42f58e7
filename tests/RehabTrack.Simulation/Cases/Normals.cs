namespace RehabTrack.Simulation.Cases;

/// <summary>Standard normal numbers, seeded, so that every run sees the same cases.</summary>
internal static class Normals
{
    /// <summary>Box and Muller's transform.</summary>
    public static double Normal(this Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
