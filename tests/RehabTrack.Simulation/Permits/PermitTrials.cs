using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Simulation.Permits;

/// <summary>Holds the permit against the naive model, and against what no history may break. A broken one is cut down before it is told.</summary>
public static class PermitTrials
{
    private const int Days = RandomHistories.LastDay + 40;
    private static readonly PermitSettings Settings = new();

    /// <summary>What is wrong with made-up histories, each cut down to what it takes; nothing when all is well.</summary>
    /// <param name="first">The first seed.</param>
    /// <param name="count">How many histories.</param>
    public static IReadOnlyList<string> Run(int first, int count) =>
        [.. Enumerable.Range(first, count).AsParallel().AsOrdered().Select(Try).OfType<string>()];

    /// <summary>What is wrong with the history of a seed; null when nothing is.</summary>
    public static string? Try(int seed)
    {
        Random random = new(seed);
        RandomHistories made = new(random);
        PermitHistory history = made.Next();
        if (Wrong(history) is not null)
        {
            PermitHistory least = CutDown(history, smaller => Wrong(smaller) is not null);
            return $"seed {seed}: {Wrong(least)}\n{Told(least)}";
        }

        for (int extra = 0; extra < 3; extra++)
        {
            PermitEntry entry = Placed(history, made.Unsigned());
            if (Raised(history, entry) is not null)
            {
                PermitHistory least = CutDown(history, smaller => Raised(smaller, entry) is not null);
                return $"seed {seed}: {Raised(least, entry)}\n{Told(least)}with {entry}";
            }
        }

        return null;
    }

    /// <summary>
    /// Where an entry without a signature raises a component of a permit; null when it raises none on any day. A case that was put away
    /// needs no examination for what is signed after that: those days are the signature's.
    /// </summary>
    public static string? Raised(PermitHistory history, PermitEntry entry)
    {
        IReadOnlyList<Permit> without = Over(history);
        IReadOnlyList<Permit> with = Over(history.With(entry));
        int days =
            entry is CaseClosed
                ? history
                    .Entries.Where(other => other.Order > entry.Order)
                    .Select(CountsFrom)
                    .OfType<DateOnly>()
                    .Select(Number)
                    .DefaultIfEmpty(int.MaxValue)
                    .Min()
                : int.MaxValue;
        return without
            .Zip(with)
            .Take(days)
            .Where(pair => !pair.Second.Work.IsWithin(pair.First.Work))
            .Select(pair => $"day {Number(pair.First.Date)} rises from {Brief(pair.First)} to {Brief(pair.Second)}")
            .FirstOrDefault();
    }

    private static string? Wrong(PermitHistory history)
    {
        IReadOnlyList<Permit> permits = Over(history);
        return Differs(history, permits) ?? Breaks(history, permits) ?? Leaks(history, permits);
    }

    private static string? Differs(PermitHistory history, IReadOnlyList<Permit> permits)
    {
        NaivePermits naive = new(history, Days, Settings);
        return permits
            .Select((permit, day) => (permit, day, Model: naive.On(day)))
            .Where(row => (row.permit.Work, row.permit.State) != row.Model)
            .Select(row => $"day {row.day}: {Brief(row.permit)}, the model says {row.Model.State} {Brief(row.Model.Work)}")
            .FirstOrDefault();
    }

    /// <summary>What the permits of one history must keep to, whatever happened.</summary>
    private static string? Breaks(PermitHistory history, IReadOnlyList<Permit> permits)
    {
        for (int day = 0; day < permits.Count; day++)
        {
            Permit permit = permits[day];
            Permit? before = day == 0 ? null : permits[day - 1];
            string? broken =
                !permit.Work.IsWithin(permit.SignedWork) ? "more than is signed"
                : permit.VoidAfter < permit.Date ? "void before its day"
                : permit.Reasons.Count == 0 ? "without a reason"
                : permit.Source is { } source && !IsUnderCeiling(history, source, permit.SignedWork) ? "above the ceiling of its stretch"
                : permit.Source is { } at && at.Place > at.SignedPlace ? "ahead of what was signed"
                : permit.State is PermitState.Live or PermitState.Held && permit.GraceEnds < permit.Date ? "not lapsed after the grace"
                : IsStopped(history, permit.Date) && permit.Work != Work.None ? "work in spite of a stop"
                : IsWorried(history, permit.Date) && permit.State is PermitState.Live or PermitState.Held or PermitState.Lapsed
                    ? "no floor in spite of a concern or a sign"
                : permit.State is PermitState.Floor or PermitState.Lapsed && !IsFloor(history, permit) ? "more than a signed floor"
                : before?.Source is { } earlier && permit.Source is { } later && Placed(history, earlier, later, permit.Date)
                    ? Moved(history, before, earlier, later)
                : null;
            if (broken is not null)
            {
                return $"day {day}: {broken}, {Brief(permit)}";
            }
        }

        return null;
    }

    /// <summary>Imports grant nothing, and a signature that comes late changes no day before it was recorded.</summary>
    private static string? Leaks(PermitHistory history, IReadOnlyList<Permit> permits)
    {
        PermitHistory own = new([
            .. history.Entries.Where(entry => !entry.IsImported || entry is not (PlanSigned or DecisionSigned or ExaminationSigned)),
        ]);
        if (!Over(own).Select(permit => permit.Work).SequenceEqual(permits.Select(permit => permit.Work)))
        {
            return "an imported signature counts";
        }

        if (!Over(Changed(history, OfOneVet)).Select(permit => permit.Work).SequenceEqual(permits.Select(permit => permit.Work)))
        {
            return "it matters who signed";
        }

        if (OfWeek(history, permits) is { } week)
        {
            return week;
        }

        foreach (PermitEntry late in history.Entries.Where(entry => entry is PlanSigned or DecisionSigned))
        {
            PermitHistory without = new([.. history.Entries.Where(entry => entry != late)]);
            int recorded = Math.Clamp(Number(late.RecordedOn), 0, permits.Count);
            if (Lifted(history, late, permits) is { } lifted)
            {
                return lifted;
            }

            if (
                !Over(without)
                    .Take(recorded)
                    .Select(permit => permit.Work)
                    .SequenceEqual(permits.Take(recorded).Select(permit => permit.Work))
            )
            {
                return $"a signature recorded on day {recorded} counts before it";
            }
        }

        return null;
    }

    /// <summary>What was done in a week takes from the rest of it, and changes nothing else: neither the state nor whether a day counts.</summary>
    private static string? OfWeek(PermitHistory history, IReadOnlyList<Permit> permits) =>
        Over(Changed(history, WithoutWork))
            .Zip(permits)
            .Where(pair =>
                !pair.Second.Work.IsWithin(pair.First.Work)
                || pair.Second.BeforeWeek != pair.First.Work
                || pair.Second.State != pair.First.State
                || pair.Second.Source != pair.First.Source
            )
            .Select(pair => $"day {Number(pair.First.Date)}: work done makes {Brief(pair.Second)} of {Brief(pair.First)}")
            .FirstOrDefault();

    /// <summary>
    /// Where a signature that is no advance gives more on its day than the signed row did without it and without what it may lift, or a
    /// step back goes forward; null when it does not, or when another signature counts from the same day.
    /// </summary>
    private static string? Lifted(PermitHistory history, PermitEntry signed, IReadOnlyList<Permit> permits)
    {
        bool isAdvance = signed is PlanSigned { IsAdvance: true } or DecisionSigned { Decision.Kind: DecisionKind.Advance };
        if (
            isAdvance
            || CountsFrom(signed) is not { } from
            || Number(from) is var day && (day < 0 || day >= permits.Count)
            || history.Entries.Any(entry => entry != signed && CountsFrom(entry) == from)
        )
        {
            return null;
        }

        Permit without = Over(new([.. history.Entries.Where(entry => entry != signed && entry is not WorkLowered)]))[day];
        bool isHigher = signed is DecisionSigned { Decision.Kind: DecisionKind.StepBack }
            ? permits[day].Source?.SignedPlace > without.Source?.SignedPlace
            : !permits[day].Work.IsWithin(without.SignedWork);
        return isHigher ? $"day {day}: no advance, and {Brief(permits[day])} after {Brief(without)}" : null;
    }

    /// <summary>Whether a stop counts that nobody has signed over: no plan, advance or step back recorded later.</summary>
    private static bool IsStopped(PermitHistory history, DateOnly date) =>
        history.Entries.Any(entry =>
            entry is DecisionSigned { Decision.Kind: DecisionKind.Stop }
            && CountsFrom(entry) <= date
            && !history.Entries.Any(other =>
                other.Order > entry.Order
                && CountsFrom(other) <= date
                && other is PlanSigned or DecisionSigned { Decision.Kind: DecisionKind.Advance or DecisionKind.StepBack }
            )
        );

    /// <summary>Whether a concern or a sign counts that no signature recorded later has had a say in.</summary>
    private static bool IsWorried(PermitHistory history, DateOnly date) =>
        history.Entries.Any(entry =>
            entry switch
            {
                ConcernOpened concern => concern.Date <= date || concern.RecordedOn <= date,
                DayLogged { Log.HasSign: true } logged => logged.Log.Date <= date || logged.RecordedOn <= date,
                _ => false,
            } && !history.Entries.Any(other => other.Order > entry.Order && CountsFrom(other) <= date)
        );

    /// <summary>Whether the work is within a floor that was signed by then, or none.</summary>
    private static bool IsFloor(PermitHistory history, Permit permit) =>
        history
            .Entries.Where(entry => CountsFrom(entry) <= permit.Date)
            .Select(entry => entry is PlanSigned plan ? plan.Plan.Floor : ((DecisionSigned)entry).Decision.Floor)
            .OfType<Work>()
            .Append(Work.None)
            .Any(permit.Work.IsWithin);

    private static PermitHistory Changed(PermitHistory history, Func<PermitEntry, PermitEntry> change) =>
        new([.. history.Entries.Select(change)]);

    private static PermitEntry OfOneVet(PermitEntry entry) =>
        entry switch
        {
            PlanSigned signed => signed with { SignedBy = "" },
            DecisionSigned signed => signed with { Decision = signed.Decision with { SignedBy = "" } },
            _ => entry,
        };

    private static PermitEntry WithoutWork(PermitEntry entry) =>
        entry is DayLogged logged ? logged with { Log = logged.Log with { Done = default } } : entry;

    /// <summary>The day from which a signature made here counts; null for every other entry.</summary>
    private static DateOnly? CountsFrom(PermitEntry entry) =>
        entry switch
        {
            { IsImported: true } => null,
            PlanSigned plan => Max(plan.From, plan.RecordedOn),
            DecisionSigned signed => Max(signed.Decision.From, signed.RecordedOn),
            _ => null,
        };

    private static bool IsUnderCeiling(PermitHistory history, PermitSource source, Work work)
    {
        PlanVersion plan = PlanOf(history, source);
        int stretch = PlanRows.StretchOf(plan, source.Place.Step);
        Work[] ceilings =
        [
            .. Enumerable
                .Range(0, plan.Steps.Count)
                .Where(step => PlanRows.StretchOf(plan, step) == stretch)
                .Select(step => PlanRows.CeilingOf(plan, step)),
        ];
        return PlanRows.Gaits.All(gait => work.Outing.Of(gait) <= ceilings.Max(ceiling => ceiling.Outing.Of(gait)))
            && work.OutingsADay <= ceilings.Max(ceiling => ceiling.OutingsADay)
            && work.DaysAWeek <= ceilings.Max(ceiling => ceiling.DaysAWeek)
            && ceilings.Any(ceiling => (work.Modes & ~ceiling.Modes) == WorkModes.None)
            && work.Circles <= ceilings.Max(ceiling => ceiling.Circles)
            && ceilings.Any(ceiling => (work.Surfaces & ~ceiling.Surfaces) == Surfaces.None)
            && work.Turnout <= ceilings.Max(ceiling => ceiling.Turnout);
    }

    /// <summary>Whether two days stand under the same placing signature.</summary>
    private static bool Placed(PermitHistory history, PermitSource earlier, PermitSource later, DateOnly date) =>
        earlier.PlanVersionId == later.PlanVersionId
        && !history.Entries.Any(entry =>
            entry switch
            {
                PlanSigned plan => Max(plan.From, plan.RecordedOn) == date,
                DecisionSigned { Decision: var decision } => Max(decision.From, entry.RecordedOn) == date,
                _ => false,
            }
        );

    /// <summary>Between signatures a place moves by a day at most, only after a day that was live, and never through a gate.</summary>
    private static string? Moved(PermitHistory history, Permit before, PermitSource earlier, PermitSource later)
    {
        PlanVersion plan = PlanOf(history, later);
        bool hasMoved = later.Place != earlier.Place;
        return PlanRows.StretchOf(plan, later.Place.Step) != PlanRows.StretchOf(plan, earlier.Place.Step) ? "through a gate by itself"
            : hasMoved && later.Place != PlanRows.Next(plan, earlier.Place) ? "jumped"
            : hasMoved && before.State != PermitState.Live ? $"grew after a day that was {before.State}"
            : null;
    }

    private static PlanVersion PlanOf(PermitHistory history, PermitSource source) =>
        history.Entries.OfType<PlanSigned>().First(entry => entry.Plan.Id == source.PlanVersionId).Plan;

    private static DateOnly Max(DateOnly one, DateOnly other) => one > other ? one : other;

    private static IReadOnlyList<Permit> Over(PermitHistory history) => PermitReader.Over(history, Story.Day(0), Story.Day(Days), Settings);

    /// <summary>The entry with the place in the sequence that its day of recording gives it, last of that day.</summary>
    private static PermitEntry Placed(PermitHistory history, PermitEntry entry)
    {
        long before = history
            .Entries.Where(other => other.RecordedOn <= entry.RecordedOn)
            .Select(other => other.Order)
            .DefaultIfEmpty()
            .Max();
        return entry with { Order = before + 5 };
    }

    private static PermitHistory CutDown(PermitHistory history, Func<PermitHistory, bool> isBroken)
    {
        List<PermitEntry> entries = [.. history.Entries];
        for (int index = entries.Count - 1; index >= 0; index--)
        {
            PermitEntry[] fewer = [.. entries.Where((_, other) => other != index)];
            if (isBroken(new PermitHistory(fewer)))
            {
                entries = [.. fewer];
            }
        }

        return new(entries);
    }

    private static int Number(DateOnly date) => date.DayNumber - Story.Day0.DayNumber;

    private static string Told(PermitHistory history) =>
        string.Concat(
            history.Entries.Select(entry =>
                entry is PlanSigned { Plan.Steps: var steps } ? $"{entry} {string.Join(" / ", steps)}\n" : $"{entry}\n"
            )
        );

    private static string Brief(Permit permit) =>
        $"{permit.State} {Brief(permit.Work)} at {permit.Source?.Place} of {permit.Source?.SignedPlace} for {string.Join(' ', permit.Reasons.Select(reason => reason.Code))}";

    private static string Brief(Work work) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"[{work.Outing.Walk} {work.Outing.Trot} {work.Outing.Canter} {work.Outing.Gallop} × {work.OutingsADay} × {work.DaysAWeek} {work.Modes} {work.Circles} {work.Surfaces} {work.Turnout}]"
        );
}
