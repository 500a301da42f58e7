using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The words of a place and its link.</summary>
public static class PlaceWords
{
    /// <summary>A lesion area: nought is looked and none seen, diffuse is not nought, unknown is not recorded.</summary>
    public static string Lesion(LesionArea area) =>
        area.Kind switch
        {
            LesionAreaKind.Measured when area.Area.Value == 0 => CasePage.LesionNone,
            LesionAreaKind.Measured => Figures.Area(area.Area),
            LesionAreaKind.Diffuse => CasePage.LesionDiffuse,
            LesionAreaKind.Unknown => CasePage.NotRecorded,
        };

    /// <summary>The share in short: "22 %", "diffuse", or a dash.</summary>
    public static string Share(Place place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.LesionArea.Kind == LesionAreaKind.Diffuse ? CasePage.DiffuseShort : Figures.Percent(place.LesionPercent);
    }

    /// <summary>How sure it is that the place is the same as before, and who said so.</summary>
    /// <param name="rung">The place.</param>
    /// <param name="word">A person's word on it; null when there is none.</param>
    public static string Link(Rung rung, LinkWordView? word)
    {
        ArgumentNullException.ThrowIfNull(rung);
        return (rung.Step.Basis, rung.Step.LinkProbability) switch
        {
            (LinkBasis.Pinned, _) when word is not null => Text(CasePage.LinkPinnedBy, word.SaidBy, word.Reason),
            (LinkBasis.Pinned, _) => CasePage.LinkPinned,
            (LinkBasis.First, _) or (_, null) => rung.Others.Any() ? CasePage.LinkFirst : CasePage.LinkAlone,
            (LinkBasis.Computed, { } probability) => Text(
                CasePage.LinkComputed,
                Figures.Level(rung.Track.ConsensusLevel),
                Figures.Percent(new Percent(100 * probability))
            ),
        };
    }

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
