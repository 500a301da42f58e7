using RehabTrack.Records.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Shared.Yard;

/// <summary>What stands in the place of a release that may not be read today.</summary>
public static class ReleaseWords
{
    /// <summary>The line; null when nothing was released, or what was may be read.</summary>
    /// <param name="release">The release.</param>
    /// <param name="on">The day of the release, in words.</param>
    public static string? Withheld(YardRelease release, string on)
    {
        ArgumentNullException.ThrowIfNull(release);
        return release.Standing switch
        {
            ReleaseStanding.Over => string.Format(TextCulture.Default, OutsidePages.ReleaseOver, on),
            ReleaseStanding.NotToday => string.Format(TextCulture.Default, OutsidePages.ReleaseNotToday, on),
            ReleaseStanding.NotYet => string.Format(TextCulture.Default, OutsidePages.ReleaseNotYet, on, Figures.Date(release.From)),
            ReleaseStanding.Nothing or ReleaseStanding.Counts => null,
        };
    }
}
