using RehabTrack.Wording;

namespace RehabTrack.Web.Features.About;

/// <summary>How often the engine fails in simulated courses, as docs/methods.md reports it under "Where it fails".</summary>
public static class KnownFailures
{
    /// <summary>What is true, what is said wrongly, and its share, 0 to 1.</summary>
    public static IReadOnlyList<(string True, string Said, double Share)> All { get; } =
    [
        (UsePage.TrueSlow250, UsePage.SaidNoProgress, 0.063),
        (UsePage.TrueSlow400, UsePage.SaidNoProgress, 0.553),
        (UsePage.TrueError, UsePage.SaidWorsening, 0.542),
        (UsePage.TrueError, UsePage.SaidHealing, 0.337),
        (UsePage.TrueLinks, UsePage.SaidWorseningFourth, 0.043),
    ];
}
