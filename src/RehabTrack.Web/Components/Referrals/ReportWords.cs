using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Referrals;
using RehabTrack.Web.Components.Cases;
using RehabTrack.Web.Components.People;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Referrals;

/// <summary>What a report says, in words, for the page and for paper.</summary>
public static class ReportWords
{
    /// <summary>Horse and injury; what is not known says so.</summary>
    public static IEnumerable<(string Name, string Value)> Facts(ReportContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        (string Name, string? Value)[] facts =
        [
            (ReferralTexts.Name, content.HorseName),
            (ReferralTexts.Chip, content.Microchip),
            (ReferralTexts.Born, content.BirthYear?.ToString(CultureInfo.InvariantCulture)),
            (ReferralTexts.Sex, content.Sex is { } sex ? RoleNames.Of(sex) : null),
            (ReferralTexts.Injury, Names.AsTitle(CaseNames.Of(content.Limb, content.Structure))),
            (ReferralTexts.Onset, DateOf(content.Onset)),
            (ReferralTexts.FirstDiagnosis, DateOf(content.FirstDiagnosis)),
            (ReferralTexts.ResponsibleVet, content.ResponsibleVet),
        ];
        return facts.Select(fact => (fact.Name, fact.Value ?? ReferralTexts.NotGiven));
    }

    /// <summary>What stands under the verdict: its rate where there is one, and who signed under it.</summary>
    public static IEnumerable<string> Under(ReportVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        if (verdict is { Measure: { } measure, RatePercentPer60Days: { } rate, Lower95Percent: { } lower, Upper95Percent: { } upper })
        {
            yield return Say(
                ReferralTexts.Rate,
                Names.AsTitle(Names.Of(measure)),
                Figures.SignedPercent(rate),
                Figures.SignedPercents(lower, upper)
            );
        }

        yield return Say(ReferralTexts.VerdictSigned, verdict.SignedBy, Figures.Date(verdict.AsOf));
    }

    /// <summary>What computed the verdict.</summary>
    public static string Engine(ReportVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return Say(ReferralTexts.Engine, verdict.EngineVersion);
    }

    /// <summary>The decision with its day and its vet.</summary>
    public static string Decided(Decision decision, DateOnly on)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return Say(ReferralTexts.DecisionSigned, Names.AsTitle(Names.Of(decision.Kind)), Figures.Date(on), decision.SignedBy);
    }

    /// <summary>Title and number of the plan.</summary>
    public static string Planned(PlanVersion plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Say(ReferralTexts.PlanSigned, plan.Title, plan.Number);
    }

    /// <summary>Which examination a table of readings is of.</summary>
    public static string ReadingsOf(ReportExamination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return Say(ReferralTexts.ReadingsOf, Figures.Date(examination.Date));
    }

    /// <summary>When a report was released, and by whom.</summary>
    public static string Released(ReportContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return Say(ReferralTexts.Released, Figures.Date(content.Date), content.ReleasedBy);
    }

    /// <summary>Who wrote the words of a report.</summary>
    public static string WordsOf(ReportContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return Say(ReferralTexts.WordsOf, content.ReleasedBy);
    }

    /// <summary>For whom a report is.</summary>
    public static string ForReader(string reader) => Say(ReferralTexts.ForReader, reader);

    /// <summary>What is said below every report.</summary>
    public static string Care => $"{ReferralTexts.Care} {OutsidePages.Caution}";

    /// <summary>The figures that follow from an examination, each with what it is called.</summary>
    public static IReadOnlyList<(string Name, string Figure)> FiguresOf(ReportExamination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return
        [
            (ReferralTexts.Volume, Figures.Volume(examination.VolumeCm3 is { } volume ? new CubicCentimetres(volume) : null)),
            (ReferralTexts.Worst, Figures.Percent(Share(examination.WorstPercent))),
            (ReferralTexts.Total, Figures.ExactPercent(Share(examination.TotalPercent))),
            (ReferralTexts.Length, Figures.Length(examination.LesionLengthCm is { } length ? new Centimetres(length) : null)),
        ];
    }

    /// <summary>How an examination was made, and by whom.</summary>
    public static string Examined(ReportExamination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        string said = Say(
            ReferralTexts.Examined,
            Names.AsTitle(Names.Of(examination.Stance)),
            examination.Examiner ?? examination.SignedBy
        );
        return examination.Landmark is { } landmark ? $"{said} {Say(ReferralTexts.Tape, Names.Of(landmark))}" : said;
    }

    /// <summary>The readings as rows, sorted as an examination shows them.</summary>
    public static IReadOnlyList<EntryRow> Readings(ReportExamination examination)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return EntryGrid.Of(examination.Readings, false, () => string.Empty).Sorted().Rows;
    }

    /// <summary>The columns of readings: one that nobody filled in takes no room; notes are never in a report.</summary>
    public static IReadOnlyList<EntryColumn> Columns(IReadOnlyList<EntryRow> rows) =>
        [
            .. EntryColumns.All.Where(column =>
                column is EntryColumn.Part or EntryColumn.Level || (column != EntryColumn.Note && rows.Any(row => row[column].Length > 0))
            ),
        ];

    /// <summary>Whether a column stands to the right.</summary>
    public static bool IsFigure(EntryColumn column) => EntryColumns.IsNumber(column) || EntryColumns.IsGrade(column);

    /// <summary>A cell of the readings.</summary>
    public static string Cell(EntryRow row, EntryColumn column)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row[column].Length == 0 ? "–" : row[column];
    }

    private static Percent? Share(double? percent) => percent is { } share ? new Percent(share) : null;

    private static string? DateOf(DateOnly? date) => date is null ? null : Figures.Date(date);

    private static string Say(string text, params object[] values) => string.Format(TextCulture.Default, text, values);
}
