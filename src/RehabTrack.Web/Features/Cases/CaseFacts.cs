using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Web.Components.People;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Cases;

/// <summary>The line under the name of the horse.</summary>
public static class CaseFacts
{
    /// <summary>As "14-year-old mare · injured 2 Dec 2025 · day 246 since baseline · measured by H. Brandt throughout".</summary>
    /// <param name="injury">The case.</param>
    /// <param name="asOf">The date the page speaks for.</param>
    public static string Line(CaseView injury, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(injury);
        Examination[] read =
        [
            .. injury.Course.Examinations.Where(examination => examination.Date <= asOf).OrderBy(examination => examination.Date),
        ];
        string?[] parts =
        [
            Animal(injury.Horse, asOf),
            injury.Course.Onset is { } onset ? Text(CasePage.Injured, Figures.Date(onset)) : CasePage.OnsetUnknown,
            injury.FirstDiagnosis is { } diagnosed ? Text(CasePage.Diagnosed, Figures.Date(diagnosed)) : null,
            injury.Course.Reinjury is { } again ? Text(CasePage.Reinjured, Figures.Date(again)) : null,
            read.Length > 0 ? Text(CasePage.SinceBaseline, asOf.DayNumber - read[0].Date.DayNumber) : null,
            read.Length > 0 ? Measurers(read) : null,
        ];
        return string.Join(" · ", parts.Where(part => !string.IsNullOrEmpty(part)));
    }

    private static string? Animal(HorseView horse, DateOnly asOf)
    {
        string? sex = horse.Sex is { } known ? RoleNames.Of(known) : null;
        int? age = horse switch
        {
            { BirthDate: { } born } => asOf.Year - born.Year - (asOf < born.AddYears(asOf.Year - born.Year) ? 1 : 0),
            { BirthYear: { } year } => asOf.Year - year,
            _ => null,
        };
        return age is { } years and >= 0 ? Text(CasePage.YearOld, years, sex ?? CasePage.Horse) : Names.AsTitle(sex ?? string.Empty);
    }

    private static string Measurers(Examination[] read)
    {
        string[] names =
        [
            .. read.SelectMany(examination => examination.Readings)
                .Select(reading => reading.Measurer)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal),
        ];
        return names switch
        {
            [] => CasePage.MeasurerUnknown,
            [var only] => Text(CasePage.MeasuredByOne, only),
            _ => Text(CasePage.MeasuredBySeveral, string.Join(", ", names)),
        };
    }

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
