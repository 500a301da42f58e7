using RehabTrack.Rechecks.Healing;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.About;

/// <summary>Where the engine fails, and how often in simulated courses, as docs/methods.md reports it under "Where it fails".</summary>
public static class KnownFailures
{
    /// <summary>Where it fails, in a sentence each.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        AboutPage.FailsSlow,
        AboutPage.FailsFloor,
        AboutPage.FailsError,
        AboutPage.FailsLinks,
        AboutPage.FailsGrades,
        string.Format(TextCulture.Default, AboutPage.FailsEarly, Figures.Days(new TrendSettings().ProvisionalBaselineDays)),
    ];

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
