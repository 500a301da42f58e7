using RehabTrack.Records.Archive;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Archive;

/// <summary>What the kinds of what was put away are called.</summary>
public static class ArchiveNames
{
    /// <summary>As "Drafts".</summary>
    public static string Of(ArchivedKind kind) =>
        kind switch
        {
            ArchivedKind.Horse => ArchiveTexts.Horses,
            ArchivedKind.Person => ArchiveTexts.People,
            ArchivedKind.Case => ArchiveTexts.Cases,
            ArchivedKind.Draft => ArchiveTexts.Drafts,
            ArchivedKind.Care => ArchiveTexts.Care,
            ArchivedKind.Cover => ArchiveTexts.Cover,
            ArchivedKind.Repeats => ArchiveTexts.Repeats,
        };

    /// <summary>As "2 drafts were put away".</summary>
    public static string Counted(ArchivedKind kind, int count) =>
        kind switch
        {
            ArchivedKind.Horse => Components.Counted.Of(count, ArchiveTexts.OneHorseAway, ArchiveTexts.HorsesAway),
            ArchivedKind.Person => Components.Counted.Of(count, ArchiveTexts.OnePersonAway, ArchiveTexts.PeopleAway),
            ArchivedKind.Case => Components.Counted.Of(count, ArchiveTexts.OneCaseAway, ArchiveTexts.CasesAway),
            ArchivedKind.Draft => Components.Counted.Of(count, ArchiveTexts.OneDraftAway, ArchiveTexts.DraftsAway),
            ArchivedKind.Care => Components.Counted.Of(count, ArchiveTexts.OneCareAway, ArchiveTexts.CareAway),
            ArchivedKind.Cover => Components.Counted.Of(count, ArchiveTexts.OneCoverAway, ArchiveTexts.CoverAway),
            ArchivedKind.Repeats => Components.Counted.Of(count, ArchiveTexts.OneRepeatsAway, ArchiveTexts.RepeatsAway),
        };
}
