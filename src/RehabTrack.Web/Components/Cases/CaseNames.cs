using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>What a case is called beside the name of its horse.</summary>
public static class CaseNames
{
    /// <summary>As "left hind, suspensory ligament".</summary>
    public static string Of(Limb limb, Structure structure) =>
        (limb, structure) switch
        {
            (Limb.Unknown, Structure.Unknown) => CaseTexts.NothingKnown,
            (_, Structure.Unknown) => Names.Of(limb),
            (Limb.Unknown, _) => Names.Of(structure),
            _ => string.Format(TextCulture.Default, CaseTexts.LimbAndStructure, Names.Of(limb), Names.Of(structure)),
        };
}
