using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Exams;

/// <summary>What the dates of a case must keep to, for files and pages alike.</summary>
public static class DateRules
{
    private static readonly DateOnly Earliest = new((int)ReferenceTable.Load("limits")["earliestYear"], 1, 1);

    /// <summary>What is wrong with the date of an examination.</summary>
    /// <param name="date">The date.</param>
    /// <param name="birthDate">The horse's date of birth; null when not known.</param>
    /// <param name="today">The practice's date; null where nothing may be said of the future.</param>
    public static IReadOnlyList<Problem> CheckExamination(DateOnly date, DateOnly? birthDate, DateOnly? today) =>
        Check(ReadingFields.ExaminationDate, date, birthDate, today);

    /// <summary>What is wrong with the date of an injury.</summary>
    /// <param name="date">The date.</param>
    /// <param name="birthDate">The horse's date of birth; null when not known.</param>
    /// <param name="today">The practice's date; null where nothing may be said of the future.</param>
    public static IReadOnlyList<Problem> CheckOnset(DateOnly date, DateOnly? birthDate, DateOnly? today) =>
        Check(ReadingFields.OnsetDate, date, birthDate, today);

    /// <summary>What is wrong with a date of birth.</summary>
    /// <param name="date">The date.</param>
    /// <param name="today">The practice's date; null where nothing may be said of the future.</param>
    public static IReadOnlyList<Problem> CheckBirth(DateOnly date, DateOnly? today) => Check(ReadingFields.BirthDate, date, null, today);

    private static List<Problem> Check(string field, DateOnly date, DateOnly? birthDate, DateOnly? today)
    {
        List<Problem> problems = [];
        if (date < Earliest)
        {
            problems.Add(new(field, "date-too-early", Text(date), Text(Earliest)));
        }

        if (date > today)
        {
            problems.Add(new(field, "date-in-future", Text(date), Text(today.Value)));
        }

        if (date < birthDate)
        {
            problems.Add(new(field, "date-before-birth", Text(date), Text(birthDate.Value)));
        }

        return problems;
    }

    private static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
