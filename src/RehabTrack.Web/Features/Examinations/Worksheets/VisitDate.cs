using System.Globalization;
using System.Text.RegularExpressions;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A date as people write it: 2026-07-09, 9.7.2026, 9/7/26, 9 Jul, July 9, today. The day stands before the month.</summary>
public static partial class VisitDate
{
    private const int LargestTwoDigitYear = 99;
    private const int Century = 2000;

    /// <summary>Reads a date.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="today">The practice's date: a date without a year is the latest such date up to today.</param>
    /// <returns>The date, or null when the text is not one.</returns>
    public static DateOnly? Parse(string text, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(text);
        string typed = text.Trim().ToLowerInvariant();
        if (string.Equals(typed, ExaminationPage.Today, StringComparison.OrdinalIgnoreCase))
        {
            return today;
        }

        if (string.Equals(typed, ExaminationPage.Yesterday, StringComparison.OrdinalIgnoreCase))
        {
            return today.AddDays(-1);
        }

        if (YearFirst().Match(typed) is { Success: true } iso)
        {
            return Make(Number(iso, "y"), Number(iso, "m"), Number(iso, "d"), today);
        }

        if (DayFirst().Match(typed) is { Success: true } european)
        {
            return Make(Number(european, "y"), Number(european, "m"), Number(european, "d"), today);
        }

        foreach (Match named in (Match[])[DayThenName().Match(typed), NameThenDay().Match(typed)])
        {
            if (named.Success && MonthOf(named.Groups["m"].Value) is { } month)
            {
                return Make(Number(named, "y"), month, Number(named, "d"), today);
            }
        }

        return null;
    }

    private static int? Number(Match match, string group) =>
        match.Groups[group] is { Success: true } found ? int.Parse(found.Value, CultureInfo.InvariantCulture) : null;

    private static int? MonthOf(string word)
    {
        const int FewestLetters = 3;
        DateTimeFormatInfo names = TextCulture.Default.DateTimeFormat;
        for (int month = 1; word.Length >= FewestLetters && month <= 12; month++)
        {
            if (names.GetMonthName(month).StartsWith(word, StringComparison.OrdinalIgnoreCase) || IsSept(word, month))
            {
                return month;
            }
        }

        return null;
    }

    private static bool IsSept(string word, int month) => month == 9 && word == "sept";

    private static DateOnly? Make(int? year, int? month, int? day, DateOnly today)
    {
        if (year is { } given)
        {
            return Valid(given <= LargestTwoDigitYear ? Century + given : given, month!.Value, day!.Value);
        }

        // Four years back always holds a 29 February.
        const int LongestWait = 4;
        return Enumerable
            .Range(0, 1 + LongestWait)
            .Select(back => Valid(today.Year - back, month!.Value, day!.Value))
            .FirstOrDefault(date => date is { } known && known <= today);
    }

    private static DateOnly? Valid(int year, int month, int day) =>
        year is >= 1 and <= 9999 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? new DateOnly(year, month, day)
            : null;

    [GeneratedRegex(@"^(?<y>\d{4})[-./]?(?<m>\d{1,2})[-./]?(?<d>\d{1,2})$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex YearFirst();

    [GeneratedRegex(@"^(?<d>\d{1,2})\s*[./ -]\s*(?<m>\d{1,2})(\s*[./ -]\s*(?<y>\d{4}|\d{2})?)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DayFirst();

    [GeneratedRegex(
        @"^(?<d>\d{1,2})(st|nd|rd|th|\.)?[\s-]*(?<m>[a-z]+)\.?,?([\s-]*(?<y>\d{4}|\d{2}))?$",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex DayThenName();

    [GeneratedRegex(@"^(?<m>[a-z]+)\.?\s*(?<d>\d{1,2})(st|nd|rd|th)?(,?\s+(?<y>\d{4}|\d{2}))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NameThenDay();
}
