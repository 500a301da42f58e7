using System.Globalization;
using RehabTrack.Records.Archive;
using RehabTrack.Web.Components;
using RehabTrack.Web.Components.Cases;
using RehabTrack.Web.Components.People;
using RehabTrack.Web.Features.OwnError;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Archive;

/// <summary>What was put away, in a line each.</summary>
public static class ArchiveWords
{
    /// <summary>What it is called.</summary>
    public static string Title(ArchivedThing thing) =>
        thing switch
        {
            ArchivedHorse horse => horse.Name,
            ArchivedPerson person => person.Name,
            ArchivedCase injury => Say(ArchiveTexts.OfHorse, injury.Horse, CaseNames.Of(injury.Limb, injury.Structure)),
            ArchivedDraft draft => Say(ArchiveTexts.DraftOf, draft.Horse, Figures.Date(draft.Date)),
            ArchivedCare care => Say(ArchiveTexts.OfHorse, care.Horse, CareSentences.Of(care.Entry)),
            ArchivedCover cover => Say(ArchiveTexts.CoverOf, cover.CoveringVet, cover.Vet),
            ArchivedRepeats repeats => repeats.Tracings[0].Subject,
            _ => throw new ArgumentException("There is no word for it.", nameof(thing)),
        };

    /// <summary>What else is known of it; empty when nothing is.</summary>
    public static string Facts(ArchivedThing thing) => string.Join(" · ", FactsOf(thing).Where(fact => !string.IsNullOrWhiteSpace(fact)));

    /// <summary>Who put it away, when, and why.</summary>
    public static string Away(ArchivedThing thing, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(thing);
        string at = Moments.Of(thing.At, timeZone);
        string away = thing.By is { } by ? Say(ArchiveTexts.AwayBy, by, at) : Say(ArchiveTexts.AwayAt, at);
        return thing is ArchivedCare { Reason: { } reason } ? Say(ArchiveTexts.AwayWhy, away, reason) : away;
    }

    /// <summary>Where it is found once it is back.</summary>
    public static string Address(ArchivedThing thing) =>
        thing switch
        {
            ArchivedHorse => $"/horses/{thing.Id}",
            ArchivedPerson => $"/people/{thing.Id}",
            ArchivedCase => $"/cases/{thing.Id}",
            ArchivedDraft => $"/examinations/{thing.Id}",
            ArchivedCare care => $"/horses/{care.HorseId}/time",
            ArchivedCover => "/rechecks/settings",
            ArchivedRepeats => "/practice/measurement-error",
            _ => throw new ArgumentException("There is no place for it.", nameof(thing)),
        };

    /// <summary>What is to be brought back before it.</summary>
    public static string First(ArchivedKind kind) => kind == ArchivedKind.Horse ? ArchiveTexts.HorseFirst : ArchiveTexts.CaseFirst;

    private static string?[] FactsOf(ArchivedThing thing) =>
        thing switch
        {
            ArchivedHorse horse =>
            [
                horse.BirthYear is { } year ? Say(ArchiveTexts.Born, year.ToString(CultureInfo.InvariantCulture)) : null,
                horse.Yard,
            ],
            ArchivedPerson person => [Names.AsTitle(RoleNames.Of(person.Role)), person.CanSignIn ? ArchiveTexts.SignsInAgain : null],
            ArchivedCase injury =>
            [
                injury.Onset is { } onset ? Say(ArchiveTexts.Injured, Figures.Date(onset)) : null,
                Counted.Examinations(injury.Examinations),
            ],
            ArchivedDraft draft =>
            [
                Names.AsTitle(CaseNames.Of(draft.Limb, draft.Structure)),
                Counted.Readings(draft.Readings),
                draft.EnteredBy is { } by ? Say(ArchiveTexts.BegunBy, by) : null,
            ],
            ArchivedCare care => [CareSentences.Days(care.Entry)],
            ArchivedCover cover => [Figures.Dates(cover.From, cover.To)],
            ArchivedRepeats repeats =>
            [
                Names.AsTitle(Names.Of(repeats.Tracings[0].Kind)),
                Names.Of(repeats.Tracings[0].Size),
                repeats.Tracings[0].Measurer,
                string.Join(", ", repeats.Tracings.Select(tracing => OwnErrorWords.Value(tracing.Size, tracing.Value))),
            ],
            _ => [],
        };

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
