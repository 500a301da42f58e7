using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Web.Components.Reference;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Cases;

/// <summary>The words of what was seen when signing, against today.</summary>
public static class SignedFiguresWords
{
    private const int PlacesNamed = 3;

    /// <summary>The class of the mark: amber where what was signed on is another, a ring where there is only more to read.</summary>
    public static string LookOf(FiguresDifference difference) =>
        IsMoved(difference) ? "amber"
        : difference.Any ? "note"
        : "good";

    /// <summary>The difference in two or three words.</summary>
    public static string InShort(FiguresDifference difference) =>
        IsMoved(difference) ? SignedFiguresTexts.Differ
        : difference.Any ? SignedFiguresTexts.MoreSince
        : SignedFiguresTexts.AsToday;

    /// <summary>What is another today, each in a sentence; empty when nothing is.</summary>
    public static IReadOnlyList<string> Differences(FiguresDifference difference, SeenFigures then, SeenFigures today)
    {
        ArgumentNullException.ThrowIfNull(difference);
        ArgumentNullException.ThrowIfNull(then);
        ArgumentNullException.ThrowIfNull(today);
        List<string> said = [];
        if (difference.IsOtherVerdict)
        {
            said.Add(Text(SignedFiguresTexts.OtherVerdict, Names.Of(then.Verdict), Names.Of(today.Verdict)));
        }

        if (difference.IsOtherMeasure)
        {
            said.Add(Text(SignedFiguresTexts.OtherMeasure, MeasureOf(then), MeasureOf(today)));
        }

        DateOnly[] beyond = [.. difference.Values.Where(value => value.IsBeyondError).Select(value => value.Then.Date)];
        if (beyond.Length > 0)
        {
            said.Add(Text(beyond.Length == 1 ? SignedFiguresTexts.BeyondOne : SignedFiguresTexts.Beyond, Dates(beyond)));
        }

        if (difference.Relinked.Count > 0)
        {
            string places = Places(difference.Relinked, then);
            said.Add(
                difference.Relinked.Count == 1
                    ? Text(SignedFiguresTexts.RelinkedOne, places)
                    : Text(SignedFiguresTexts.Relinked, difference.Relinked.Count, places)
            );
        }

        if (difference.IsOtherEngine)
        {
            said.Add(Text(SignedFiguresTexts.OtherEngine, then.EngineVersion, today.EngineVersion));
        }

        said.AddRange(difference.Settings.Select(Setting).Distinct(StringComparer.Ordinal));
        return said;
    }

    /// <summary>What happened since, each in a sentence: any of it may have moved the figures.</summary>
    public static IReadOnlyList<string> Causes(FiguresDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        List<string> said = [];
        Examined(difference.Amended, SignedFiguresTexts.AmendedOne, SignedFiguresTexts.AmendedMany);
        Examined(difference.Gone, SignedFiguresTexts.GoneOne, SignedFiguresTexts.GoneMany);
        Count(difference.WordsGiven, SignedFiguresTexts.WordsGivenOne, SignedFiguresTexts.WordsGiven);
        Count(difference.WordsWithdrawn, SignedFiguresTexts.WordsWithdrawnOne, SignedFiguresTexts.WordsWithdrawn);
        if (difference.IsOtherCase)
        {
            said.Add(SignedFiguresTexts.OtherCase);
        }

        if (difference.Added.Count > 0)
        {
            string dates = Dates(difference.Added.Select(one => one.Date));
            said.Add(
                difference.Added.Count == 1
                    ? Text(SignedFiguresTexts.AddedOne, dates)
                    : Text(SignedFiguresTexts.Added, difference.Added.Count, dates)
            );
        }

        return said;

        void Examined(IReadOnlyList<SeenExamination> examinations, string one, string many)
        {
            if (examinations.Count > 0)
            {
                said.Add(Text(examinations.Count == 1 ? one : many, Dates(examinations.Select(each => each.Date))));
            }
        }

        void Count(int count, string one, string many)
        {
            if (count > 0)
            {
                said.Add(count == 1 ? one : Text(many, count));
            }
        }
    }

    /// <summary>The measure a verdict rested on.</summary>
    public static string MeasureOf(SeenFigures figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return figures.Measure is { } measure ? Names.Of(measure) : SignedFiguresTexts.NoMeasure;
    }

    /// <summary>A value with its standard error: "2.02 cm³ ± 0.21 cm³"; a grade alone.</summary>
    public static string Value(Measure measure, SeenValue value)
    {
        ArgumentNullException.ThrowIfNull(value);
        string figure = GroundWords.Value(measure, value.Value);
        return measure == Measure.Grades
            ? figure
            : Text(SignedFiguresTexts.Value, figure, GroundWords.Value(measure, (value.Above - value.Below) / 2));
    }

    /// <summary>How a value of then stands to today's.</summary>
    public static string Say(ValueDifference value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value switch
        {
            { Today: null } => SignedFiguresTexts.SaysNot,
            { IsBeyondError: true } => SignedFiguresTexts.SaysBeyond,
            { Today: { } today } when today.Value.Equals(value.Then.Value) => SignedFiguresTexts.SaysSame,
            _ => SignedFiguresTexts.SaysWithin,
        };
    }

    // More examinations alone may turn a verdict or bring a better measure: that is no change of what was seen.
    private static bool IsMoved(FiguresDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return difference.Any
            && (!difference.IsOnlyMore || difference.Relinked.Count > 0 || difference.Values.Any(value => value.IsBeyondError));
    }

    private static string Setting(SettingDifference setting) =>
        setting is { Then: { } then, Today: { } today } && ReferenceLabels.Has(setting.Table, setting.Name)
            ? Text(
                SignedFiguresTexts.Setting,
                ReferenceLabels.Of(setting.Table, setting.Name),
                Figures.Number(then, "0.####"),
                Figures.Number(today, "0.####")
            )
            : Text(SignedFiguresTexts.SettingUnnamed, TableOf(setting.Table));

    private static string TableOf(string table) =>
        table switch
        {
            "measurement-error" => SignedFiguresTexts.Table_measurement_error,
            "linking" => SignedFiguresTexts.Table_linking,
            _ => SignedFiguresTexts.Table_trend,
        };

    private static string Places(IReadOnlyList<PlaceKey> places, SeenFigures then)
    {
        Dictionary<string, DateOnly> dates = then.Examinations.ToDictionary(one => one.ExaminationId, one => one.Date);
        string named = string.Join(
            ", ",
            places
                .Take(PlacesNamed)
                .Select(place => Text(SignedFiguresTexts.Place, Figures.Level(place.Level), Figures.Date(dates[place.ExaminationId])))
        );
        return places.Count > PlacesNamed ? Text(SignedFiguresTexts.PlacesMore, named, places.Count - PlacesNamed) : named;
    }

    private static string Dates(IEnumerable<DateOnly> dates) => string.Join(", ", dates.Select(date => Figures.Date(date)));

    private static string Text(string pattern, params object[] arguments) => string.Format(TextCulture.Default, pattern, arguments);
}
