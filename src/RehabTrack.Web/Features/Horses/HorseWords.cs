using System.Globalization;
using RehabTrack.Records.Horses;
using RehabTrack.Web.Components.People;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Horses;

/// <summary>A horse and its cases in a line each.</summary>
public static class HorseWords
{
    /// <summary>As "mare, born 2012, dressage"; empty when nothing is known.</summary>
    public static string Describe(HorseView horse)
    {
        ArgumentNullException.ThrowIfNull(horse);
        string?[] parts =
        [
            horse.Sex is { } sex ? RoleNames.Of(sex) : null,
            Born(horse) is { } born ? string.Format(TextCulture.Default, HorsePageTexts.BornIn, born) : null,
            horse.Use,
        ];
        return Names.AsTitle(string.Join(", ", parts.Where(part => !string.IsNullOrWhiteSpace(part))));
    }

    /// <summary>The date of birth, else the year; null when neither is known.</summary>
    public static string? Born(HorseView horse)
    {
        ArgumentNullException.ThrowIfNull(horse);
        return horse.BirthDate is { } date ? Figures.Date(date) : horse.BirthYear?.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>How far a case has come, as "5 examinations, 12 Jan 2026 to 8 Sep 2026; recheck due 7 Nov 2026".</summary>
    public static string Course(CaseRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.Summary is not { ExaminationCount: > 0, FirstExamination: { } first, LastExamination: { } last } summary)
        {
            return row.Onset is { } onset ? string.Format(TextCulture.Default, HorsePageTexts.Injured, Figures.Date(onset)) : "";
        }

        string examined =
            summary.ExaminationCount == 1
                ? string.Format(TextCulture.Default, HorsePageTexts.OneExamination, Figures.Date(last))
                : string.Format(TextCulture.Default, HorsePageTexts.Examinations, summary.ExaminationCount, Figures.Dates(first, last));
        return summary.DueOn is { } due && row.IsOpen
            ? string.Format(TextCulture.Default, HorsePageTexts.AndDue, examined, Figures.Date(due))
            : examined;
    }
}
