using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Records.Practices;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.OwnError;

/// <summary>The words of the practice's own error.</summary>
public static class OwnErrorWords
{
    private static readonly ReferenceTable Usual = ReferenceTable.Load("measurement-error");

    /// <summary>A value in the unit of its size.</summary>
    public static string Value(MeasuredSize size, double value) =>
        Figures.Number(value, "0.000")
        + "\u00a0"
        + (size is MeasuredSize.LigamentArea or MeasuredSize.LesionArea ? Drawings.UnitArea : Drawings.UnitLength);

    /// <summary>A cv in percent.</summary>
    public static string Cv(double? cv) => Figures.ExactPercent(cv is { } known ? new Percent(100 * known) : null, "–");

    /// <summary>Where the cv of a size in force comes from.</summary>
    public static string OriginOf(PracticeView practice, MeasuredSize size)
    {
        ArgumentNullException.ThrowIfNull(practice);
        ReferenceValue usual = Usual.Rows.First(row => row.Name == ErrorCv.RowOf(size));
        return practice.ErrorOrigins.TryGetValue(size, out ErrorOrigin? origin)
                ? string.Format(
                    TextCulture.Default,
                    OwnErrorPage.OriginOwn,
                    origin.Subjects,
                    origin.DegreesOfFreedom,
                    origin.TakenBy,
                    Figures.Date(origin.TakenOn)
                )
            : ErrorCv.Of(practice.Settings.Error, size) == usual.Value
                ? string.Format(TextCulture.Default, OwnErrorPage.OriginTable, Names.AsTitle(usual.Source))
            : OwnErrorPage.OriginHand;
    }

    /// <summary>What the repeats say, in a sentence a colleague would accept.</summary>
    public static string SentenceOf(RepeatStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return study.All is not { } error
            ? OwnErrorPage.SentenceNone
            : string.Format(
                TextCulture.Default,
                error.GrowsWithSize ? OwnErrorPage.SentenceGrows : OwnErrorPage.Sentence,
                Value(study.Size, error.DetectableChange),
                Value(study.Size, error.Mean)
            );
    }
}
