using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;

namespace RehabTrack.Rechecks.Care;

/// <summary>Marks examinations soon after an injection. A mark is a caution: it changes no verdict.</summary>
public static class InjectionMarks
{
    /// <summary>The marked examinations of a case, by date.</summary>
    /// <param name="course">The case.</param>
    /// <param name="care">What is on record of the horse.</param>
    /// <param name="settings">Within how many days; null for the default.</param>
    public static IReadOnlyList<InjectionMark> Of(CaseCourse course, IEnumerable<CareEntry> care, CareSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(course);
        int within = (settings ?? new CareSettings()).InjectionDays;
        DateOnly[] injected =
        [
            .. care.Where(entry => CareRules.IsIntoLesion(entry.Kind) && entry.CaseId == course.Id).Select(entry => entry.From).Order(),
        ];
        return
        [
            .. course
                .Examinations.OrderBy(examination => examination.Date)
                .ThenBy(examination => examination.Id, StringComparer.Ordinal)
                .Select(examination => (Examination: examination, Injected: injected.LastOrDefault(day => day <= examination.Date)))
                .Where(pair => pair.Injected != default && pair.Examination.Date.DayNumber - pair.Injected.DayNumber <= within)
                .Select(pair => new InjectionMark(
                    pair.Examination.Id,
                    pair.Examination.Date,
                    pair.Injected,
                    pair.Examination.Date.DayNumber - pair.Injected.DayNumber
                )),
        ];
    }

    /// <summary>The marks as notes of a case's page; those of earlier examinations are history.</summary>
    /// <param name="marks">The marks.</param>
    /// <param name="latest">The date of the latest examination read.</param>
    public static IReadOnlyList<Finding> Findings(IEnumerable<InjectionMark> marks, DateOnly latest) =>
        [
            .. marks
                .Where(mark => mark.Date <= latest)
                .Select(mark => new Finding
                {
                    Kind = FindingKind.SoonAfterInjection,
                    Severity = FindingSeverity.Note,
                    ExaminationId = mark.ExaminationId,
                    Date = mark.Date,
                    ComparedWith = mark.Injected,
                    Count = mark.Days,
                    IsEarlier = mark.Date < latest,
                }),
        ];
}
