using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>What a page calls one of several lesions.</summary>
public static class LesionNames
{
    /// <summary>By its name and part, or by the part alone.</summary>
    /// <param name="lesion">Its name; null when it has none.</param>
    /// <param name="part">The part it lies in.</param>
    public static string Of(string? lesion, Part part) =>
        lesion is { } name
            ? string.Format(TextCulture.Default, CasePage.LesionNamed, name, Names.Of(part))
            : string.Format(TextCulture.Default, CasePage.LesionUnnamed, Names.Of(part));
}
