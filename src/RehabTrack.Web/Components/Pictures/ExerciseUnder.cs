using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Reports.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Pictures;

/// <summary>The exercise that stands under a healing chart: weeks against the permit, and the days of decisions and concerns.</summary>
/// <param name="Logs">The days logged.</param>
/// <param name="Permitted">What was permitted, by day.</param>
/// <param name="First">The first day on which anything was signed or logged.</param>
/// <param name="Today">The last day.</param>
/// <param name="Marks">Decisions and concerns.</param>
public sealed record ExerciseUnder(
    IReadOnlyList<DayLog> Logs,
    IReadOnlyDictionary<DateOnly, Work> Permitted,
    DateOnly First,
    DateOnly Today,
    IReadOnlyList<StripMark> Marks
)
{
    /// <summary>The exercise of a horse; null while nothing was signed or logged.</summary>
    public static ExerciseUnder? Of(ExerciseView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Lines.Count == 0)
        {
            return null;
        }

        DateOnly first = view.Lines.Min(line => line.Date);
        DateOnly today = view.Today.Date;
        return new ExerciseUnder(
            [.. view.Logs],
            view.Permitted(first, today),
            first,
            today,
            [
                .. view
                    .Lines.Select(line => line.Entry)
                    .OfType<DecisionSigned>()
                    .Select(signed => new StripMark(signed.Decision.From, Names.Of(signed.Decision.Kind))),
                .. view.Concerns.Select(concern => new StripMark(concern.Line.Date, PictureTexts.Concern, IsConcern: true)),
            ]
        );
    }

    /// <summary>The weeks of a stretch of time.</summary>
    public IReadOnlyList<WeekAdherence> Weeks(DateOnly from, DateOnly to) =>
        AdherenceReader.ByWeek(Logs, Permitted, First > from ? First : from, Today < to ? Today : to);
}
