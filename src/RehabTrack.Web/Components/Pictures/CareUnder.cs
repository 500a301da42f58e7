using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;
using RehabTrack.Records.Exercise;
using RehabTrack.Reports.Exercise;
using RehabTrack.Web.Components.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Pictures;

/// <summary>
/// The treatments, medicines and signs that stand under a healing chart: those on record, and the signs of days' logs and of the visits of
/// decisions, which nobody enters twice.
/// </summary>
/// <param name="Entries">What is on record.</param>
/// <param name="Marks">All of it as marks.</param>
/// <param name="StandDowns">The vet's stand-down dates.</param>
public sealed record CareUnder(IReadOnlyList<CareEntry> Entries, IReadOnlyList<CareMark> Marks, IReadOnlyList<StandDownMark> StandDowns)
{
    /// <summary>The care of a horse.</summary>
    /// <param name="care">What is on record.</param>
    /// <param name="exercise">Its exercise, with logs and decisions; null when it cannot be read.</param>
    public static CareUnder Of(IReadOnlyList<CareView> care, ExerciseView? exercise)
    {
        ArgumentNullException.ThrowIfNull(care);
        return new CareUnder(
            [.. care.Select(one => one.Entry)],
            [
                .. care.Select(OnRecord),
                .. exercise?.Lines.Where(line => line.Entry is DayLogged { Log.HasSign: true }).Select(Logged) ?? [],
                .. exercise?.Decisions.SelectMany(Found) ?? [],
            ],
            [
                .. care.Where(one => one.Entry.StandDownUntil is not null)
                    .Select(one => new StandDownMark(one.Entry.From, one.Entry.StandDownUntil!.Value, one.StandDownBy ?? one.EnteredBy)),
            ]
        );
    }

    /// <summary>What of some care belongs to one case: its own, and the whole horse's.</summary>
    public static IReadOnlyList<CareView> OfCase(IReadOnlyList<CareView> care, string caseId)
    {
        ArgumentNullException.ThrowIfNull(care);
        return [.. care.Where(one => one.Entry.CaseId is null || one.Entry.CaseId == caseId)];
    }

    /// <summary>The examinations of a case that stand soon after an injection into its lesion.</summary>
    public IReadOnlyList<InjectionMark> AfterInjections(CaseCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        return InjectionMarks.Of(course, Entries);
    }

    private static CareMark OnRecord(CareView care) =>
        new(
            CareRules.GroupOf(care.Entry.Kind),
            care.Entry.From,
            care.Entry.Until,
            CareSentences.Short(care.Entry),
            CareSentences.Of(care.Entry),
            string.Format(TextCulture.Default, TimelinePage.EnteredBy, care.EnteredBy),
            IsIntoLesion: CareRules.IsIntoLesion(care.Entry.Kind)
        );

    private static CareMark Logged(ExerciseLine line)
    {
        string signs = SignWords.Of(((DayLogged)line.Entry).Log);
        return new CareMark(
            CareGroup.Sign,
            line.Date,
            null,
            signs,
            line.Words?.Words is { Length: > 0 } words ? $"{signs}: {words}" : signs,
            string.Format(TextCulture.Default, TimelinePage.FromLog, line.OnBehalfOf ?? line.EnteredBy),
            IsFromLog: true
        );
    }

    private static IEnumerable<CareMark> Found(DecisionView decision)
    {
        Visit visit = decision.Ground.Visit;
        CareEntry Sign(CareKind kind) => new() { Kind = kind, From = decision.Line.Entry.RecordedOn };
        CareEntry[] found =
        [
            .. visit.LamenessAaep is > 0
                ? [Sign(CareKind.Lameness) with { LamenessAaep = visit.LamenessAaep, Context = visit.LamenessContext }]
                : Array.Empty<CareEntry>(),
            .. new[] { (CareKind.Heat, visit.Heat), (CareKind.Swelling, visit.Swelling), (CareKind.Pain, visit.Pain) }
                .Where(sign => sign.Item2 > SignGrade.None)
                .Select(sign => Sign(sign.Item1) with { Grade = sign.Item2 }),
        ];
        return found.Select(entry => new CareMark(
            CareGroup.Sign,
            entry.From,
            null,
            CareSentences.Short(entry),
            CareSentences.Of(entry),
            string.Format(TextCulture.Default, TimelinePage.FromVisit, decision.Line.EnteredBy)
        ));
    }
}
