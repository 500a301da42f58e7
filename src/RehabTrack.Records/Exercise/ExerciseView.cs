using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Practices;

namespace RehabTrack.Records.Exercise;

/// <summary>The exercise of one horse, for those who work in the practice.</summary>
public sealed record ExerciseView
{
    /// <summary>The horse with its people and cases.</summary>
    public required HorseView Horse { get; init; }

    /// <summary>The practice.</summary>
    public required PracticeView Practice { get; init; }

    /// <summary>All that happened, as the heart takes it: what a signature would change can be tried on it.</summary>
    public required PermitHistory History { get; init; }

    /// <summary>What is allowed today.</summary>
    public required Permit Today { get; init; }

    /// <summary>The latest drop of the permit; null when there was none lately.</summary>
    public required PermitDrop? Drop { get; init; }

    /// <summary>The lines of the history, in the order in which they were written.</summary>
    public required IReadOnlyList<ExerciseLine> Lines { get; init; }

    /// <summary>The plan as it is being written; null when nobody is writing one.</summary>
    public required PlanDraftView? Draft { get; init; }

    /// <summary>The decisions, latest first.</summary>
    public required IReadOnlyList<DecisionView> Decisions { get; init; }

    /// <summary>The concerns, latest first.</summary>
    public required IReadOnlyList<ConcernView> Concerns { get; init; }

    /// <summary>The booked days of its open cases that passed without an examination, oldest first.</summary>
    public required IReadOnlyList<MissedRecheck> Missed { get; init; }

    /// <summary>Why the vet who asks may not sign for this horse today; null when they may, and for who is no vet.</summary>
    public Problem? SigningRefused { get; init; }

    /// <summary>The number of the last line: send it with a signature, so that nothing is signed over what was not seen.</summary>
    public int LastNumber => Lines.Count == 0 ? 0 : Lines[^1].Number;

    /// <summary>The days that were logged.</summary>
    public IEnumerable<DayLog> Logs => Lines.Select(line => line.Entry).OfType<DayLogged>().Select(logged => logged.Log);

    /// <summary>What was permitted on each day, as it was shown then.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="to">The last day.</param>
    public IReadOnlyDictionary<DateOnly, Work> Permitted(DateOnly from, DateOnly to) =>
        AdherenceReader.Permitted(
            History,
            Lines
                .Where(line => line is { Entry: DayLogged, Words.Permitted: not null })
                .Select(line => KeyValuePair.Create(line.Date, line.Words!.Permitted!)),
            from,
            to
        );

    /// <summary>The plan version that was signed last; null when none was.</summary>
    public PlanSigned? Plan => Lines.Select(line => line.Entry).OfType<PlanSigned>().LastOrDefault();
}
