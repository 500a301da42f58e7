using System.Globalization;

namespace RehabTrack.Simulation.Studies;

/// <summary>What a share is to keep.</summary>
/// <param name="Share">The share.</param>
/// <param name="IsLeast">Whether the share found is to be at least this, else at most.</param>
public sealed record Bar(double Share, bool IsLeast)
{
    public static Bar AtLeast(double share) => new(share, true);

    public static Bar AtMost(double share) => new(share, false);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{(IsLeast ? "≥" : "≤")} {Share:.000}");
}
