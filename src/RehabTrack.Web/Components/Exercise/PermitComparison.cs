using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>The permit of a horse without and with one more signature, from the day on which it counts.</summary>
public sealed class PermitComparison
{
    private const int Shown = 4 * PlanRows.DaysOfWeek;
    private const int Tried = 12 * PlanRows.DaysOfWeek;

    private PermitComparison(DateOnly from, IReadOnlyList<Permit> before, IReadOnlyList<Permit> after, IReadOnlyList<PermitReason> lacks)
    {
        Lacks = lacks;
        From = from;
        Before = before;
        After = after;
    }

    /// <summary>The day on which the signature counts first.</summary>
    public DateOnly From { get; }

    /// <summary>The permits as they stand.</summary>
    public IReadOnlyList<Permit> Before { get; }

    /// <summary>The permits with the signature.</summary>
    public IReadOnlyList<Permit> After { get; }

    /// <summary>What keeps the signature from counting in full; with one it only lowers.</summary>
    public IReadOnlyList<PermitReason> Lacks { get; }

    /// <summary>Whether the same signature tried otherwise permits something else on any day of twelve weeks.</summary>
    /// <param name="other">The other trial, from the same day.</param>
    public bool DiffersFrom(PermitComparison other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return After.Zip(other.After).Any(day => day.First.BeforeWeek != day.Second.BeforeWeek);
    }

    /// <summary>Tries a signature on all that happened.</summary>
    /// <param name="history">All that happened.</param>
    /// <param name="signature">The signature; it is put after everything else.</param>
    /// <param name="from">The day on which it counts first.</param>
    public static PermitComparison Of(PermitHistory history, PermitEntry signature, DateOnly from)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(signature);
        DateOnly to = from.AddDays(Tried - 1);
        PermitEntry signed = signature with { Order = history.Entries.Select(entry => entry.Order).DefaultIfEmpty(0).Max() + 1 };
        PermitHistory logged = new([.. history.Entries, .. LogsTo(to, signed)]);
        return new PermitComparison(
            from,
            PermitReader.Over(logged, from, to),
            PermitReader.Over(logged.With(signed), from, to),
            SigningPreview.Of(history, signed).Lacks
        );
    }

    /// <summary>The components on the first day. A gait that stays at 0 is left out.</summary>
    public IReadOnlyList<PermitSide> Components
    {
        get
        {
            Work before = Before[0].BeforeWeek;
            Work after = After[0].BeforeWeek;
            return
            [
                .. PlanRows
                    .Gaits.Where(gait => gait == Gait.Walk || before.Outing.Of(gait) > 0 || after.Outing.Of(gait) > 0)
                    .Select(gait => Side(Names.AsTitle(Names.Of(gait)), before.Outing.Of(gait), after.Outing.Of(gait), Minutes)),
                Side(ExerciseTexts.Outings, before.OutingsADay, after.OutingsADay, Number),
                Side(ExerciseTexts.DaysAWeek, before.DaysAWeek, after.DaysAWeek, Number),
                new(
                    ExerciseTexts.How,
                    PlanWords.Of(before.Modes) ?? ExerciseTexts.None,
                    PlanWords.Of(after.Modes) ?? ExerciseTexts.None,
                    before.Modes == after.Modes ? PermitChange.None
                        : (after.Modes & ~before.Modes) != WorkModes.None ? PermitChange.More
                        : PermitChange.Less
                ),
                Side(ExerciseTexts.CirclesAndGround, (int)before.Circles, (int)after.Circles, circles => Names.Of((Circles)circles)),
                new(
                    ExerciseTexts.Ground,
                    PlanWords.Of(before.Surfaces) ?? ExerciseTexts.None,
                    PlanWords.Of(after.Surfaces) ?? ExerciseTexts.None,
                    before.Surfaces == after.Surfaces ? PermitChange.None
                        : (after.Surfaces & ~before.Surfaces) != Surfaces.None ? PermitChange.More
                        : PermitChange.Less
                ),
                Side(ExerciseTexts.Standing, (int)before.Turnout, (int)after.Turnout, turnout => Names.Of((Turnout)turnout)),
            ];
        }
    }

    /// <summary>The four weeks, cut where either side changes.</summary>
    public IReadOnlyList<PermitRun> Runs
    {
        get
        {
            List<PermitRun> runs = [];
            foreach ((Permit before, Permit after) in Before.Zip(After).Take(Shown))
            {
                if (runs.Count > 0 && runs[^1].Before == before.BeforeWeek && runs[^1].After == after.BeforeWeek)
                {
                    runs[^1] = runs[^1] with { To = before.Date };
                }
                else
                {
                    runs.Add(
                        new PermitRun(
                            before.Date,
                            before.Date,
                            before.BeforeWeek,
                            after.BeforeWeek,
                            ChangeOf(before.BeforeWeek, after.BeforeWeek)
                        )
                    );
                }
            }

            return runs;
        }
    }

    // Days without a log let no time run: what is shown is what happens when every day from now on is logged.
    private static IEnumerable<PermitEntry> LogsTo(DateOnly to, PermitEntry signed) =>
        Enumerable
            .Range(0, Math.Max(0, to.DayNumber - signed.RecordedOn.DayNumber + 1))
            .Select(signed.RecordedOn.AddDays)
            .Select(day => new DayLogged
            {
                Order = signed.Order + 1 + day.DayNumber - signed.RecordedOn.DayNumber,
                RecordedOn = day,
                Log = new DayLog { Date = day },
            });

    private static PermitChange ChangeOf(Work before, Work after) =>
        !after.IsWithin(before) ? PermitChange.More
        : before == after ? PermitChange.None
        : PermitChange.Less;

    private static PermitSide Side(string name, int before, int after, Func<int, string> text) =>
        new(
            name,
            text(before),
            text(after),
            after > before ? PermitChange.More
                : after < before ? PermitChange.Less
                : PermitChange.None
        );

    private static string Minutes(int minutes) => string.Format(TextCulture.Default, ExerciseTexts.Minutes, Number(minutes));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
