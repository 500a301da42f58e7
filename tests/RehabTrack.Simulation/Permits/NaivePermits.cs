using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Simulation.Permits;

/// <summary>
/// The rules of the permit once more, written to be obvious and not fast, apart from the function: the whole course is
/// laid out in lists of days, effective time is counted from scratch for every day, rows are minutes in a list, caps are found by taking
/// away one minute at a time. Days are numbers from the first day of the stories.
/// </summary>
public sealed class NaivePermits
{
    private readonly List<PermitEntry> _all;
    private readonly PermitSettings _settings;
    private readonly List<Signed> _days = [];
    private readonly List<bool> _counted = [];
    private readonly List<int> _contact = [];
    private readonly List<bool> _isOut = [];
    private readonly List<bool> _isAway = [];
    private readonly List<(int Day, PermitEntry Entry)> _inFull = [];
    private readonly HashSet<int> _begun = [];

    public NaivePermits(PermitHistory history, int last, PermitSettings settings)
    {
        _all = [.. history.Entries.OrderBy(entry => entry.Order)];
        _settings = settings;
        for (int day = 0; day <= last; day++)
        {
            LayOut(day);
        }
    }

    /// <summary>What is permitted on a day, and how it stands.</summary>
    public (Work Work, PermitState State) On(int day)
    {
        (Work work, PermitState state) = BeforeWeek(day);
        return (LeftOfWeek(day, work), state);
    }

    /// <summary>What the days of the week so far leave of a day's work; day 0 of the stories is a Monday.</summary>
    private Work LeftOfWeek(int day, Work work)
    {
        int[] done =
        [
            .. Enumerable
                .Range(day - (day % 7), day % 7)
                .Select(earlier =>
                    _all.OfType<DayLogged>().Where(entry => Number(entry.Log.Date) == earlier).Sum(entry => entry.Log.Done.Total)
                ),
        ];
        int left = (_days[day].WeekMinutes ?? int.MaxValue) - done.Sum();
        if (!work.HasOuting || done.Count(minutes => minutes > 0) >= work.DaysAWeek || left <= 0)
        {
            return new Work { Turnout = work.Turnout };
        }

        int[] gaits = [work.Outing.Walk, work.Outing.Trot, work.Outing.Canter, work.Outing.Gallop];
        while (gaits.Sum() > left)
        {
            gaits[Array.FindLastIndex(gaits, minutes => minutes > 0)]--;
        }

        int outings = work.OutingsADay;
        while (outings * gaits.Sum() > left)
        {
            outings--;
        }

        return work with
        {
            Outing = new OutingMinutes(gaits[0], gaits[1], gaits[2], gaits[3]),
            OutingsADay = outings,
        };
    }

    private (Work Work, PermitState State) BeforeWeek(int day)
    {
        Signed signed = _days[day];
        if (signed.Plan is null || signed.IsBroken)
        {
            return (Work.None, PermitState.NothingSigned);
        }

        if (signed.HasEnded)
        {
            return (Work.None, PermitState.Closed);
        }

        Work work = Row(day, signed);
        foreach (WorkLowered lowered in Covering<WorkLowered>(day))
        {
            work = Lesser(work, lowered.AtMost);
        }

        if (signed.IsStopped || Covering<HoldPlaced>(day).Any(hold => hold.Kind == PermitHoldKind.VetWithdrawn))
        {
            return (Work.None, PermitState.Stopped);
        }

        if (signed.IsPausedOn(day) || Covering<WorkPaused>(day).Count > 0)
        {
            return (Work.None, PermitState.Paused);
        }

        Work floor = signed.Floor is null ? Work.None : Lesser(work, signed.Floor);
        if (Worries(day) || _isAway[day])
        {
            return (floor, PermitState.Floor);
        }

        if (signed.Due + _settings.GraceDays < day || signed.ValidUntil < day)
        {
            return (floor, PermitState.Lapsed);
        }

        bool isHeld =
            signed.IsHeld
            || signed.Due <= day
            || Covering<HoldPlaced>(day).Count > 0
            || Covering<WorkLowered>(day).Count > 0
            || day - _contact[day] >= _settings.LogGapDays;
        return (work, isHeld ? PermitState.Held : PermitState.Live);
    }

    private void LayOut(int day)
    {
        Signed signed = day == 0 ? new Signed() : _days[day - 1];
        _days.Add(signed);
        _counted.Add(false);
        _contact.Add(day == 0 ? 0 : _contact[day - 1]);
        _isOut.Add(false);
        _isAway.Add(day > 0 && _isAway[day - 1]);

        foreach (PermitEntry entry in _all.Where(entry => !entry.IsImported))
        {
            int from = entry switch
            {
                PlanSigned plan => Math.Max(Number(plan.From), Number(plan.RecordedOn)),
                DecisionSigned decision => Math.Max(Number(decision.Decision.From), Number(decision.RecordedOn)),
                _ => -1,
            };
            if (from == day)
            {
                signed = WithoutCase(day, signed, entry.Order);
                _days[day] = signed;
                signed = entry is PlanSigned plan ? Take(day, signed, plan) : Take(day, signed, (DecisionSigned)entry);
            }
        }

        signed = WithoutCase(day, signed, long.MaxValue);
        _days[day] = signed;
        if (signed.IsAlive)
        {
            Weigh(day, signed);
        }
    }

    /// <summary>Whether the day is one of effective time, and what it means for the log and for being away.</summary>
    private void Weigh(int day, Signed signed)
    {
        bool isFresh = _begun.Contains(day) || _inFull.Any(full => full.Day == day);
        if (isFresh)
        {
            _contact[day] = day;
            _isAway[day] = false;
        }

        if (day - _contact[day] > _settings.AwayDays)
        {
            _isAway[day] = true;
        }

        List<WorkLowered> lowered = Covering<WorkLowered>(day);
        Work planned = PlannedRow(day, signed);
        Work left = lowered.Aggregate(planned.HasOuting ? planned : Everything, (work, entry) => Lesser(work, entry.AtMost));
        _isOut[day] = signed.IsPausedOn(day) || Covering<WorkPaused>(day).Count > 0 || (lowered.Count > 0 && !left.HasOuting);
        int since = _inFull.Select(full => full.Day).Concat(_begun).DefaultIfEmpty().Max();
        int run = 0;
        while (day - run >= since && _isOut[day - run] && _days[day - run].IsAlive)
        {
            run++;
        }

        _isAway[day] |= run > _settings.AwayDays;
        bool isLogged = _all.OfType<DayLogged>()
            .Any(entry =>
                !entry.IsImported
                && Number(entry.Log.Date) == day
                && Number(entry.RecordedOn) >= day
                && Number(entry.RecordedOn) <= day + _settings.LogInTimeDays
            );
        if (isLogged || signed.IsPausedOn(day) || !planned.HasOuting)
        {
            _contact[day] = day;
        }

        _counted[day] =
            !_isOut[day]
            && !_isAway[day]
            && day - _contact[day] < _settings.LogGapDays
            && lowered.Count == 0
            && !Worries(day)
            && Covering<HoldPlaced>(day).Count == 0;
    }

    private Signed WithoutCase(int day, Signed signed, long before) =>
        signed.IsAlive && !Open(day, before).Any(signed.Cases.Contains) ? signed with { HasEnded = true, LeftOn = day } : signed;

    private Signed Take(int day, Signed before, PlanSigned entry)
    {
        if (entry.Order < before.Latest)
        {
            return before;
        }

        before = before with { Latest = entry.Order };
        Signed next = new()
        {
            Latest = entry.Order,
            Plan = entry.Plan,
            Place = entry.Place,
            PlacedOn = day,
            PlacedBy = entry.Order,
            PlacedIn = entry.Place.Step,
            Floor = entry.Plan.Floor,
            WeekMinutes = entry.Plan.Caps.WeekMinutes,
            Cases = [.. Open(day)],
        };
        if (
            PlanRules.Check(entry.Plan).Count > 0
            || entry.Place.Step < 0
            || entry.Place.Step >= entry.Plan.Steps.Count
            || entry.Place.Days < 0
        )
        {
            return next with { IsBroken = true };
        }

        int? gate = DaysToGate(entry.Plan, entry.Place) is { } days ? day + days : null;
        (int? due, bool isGate) = Sooner(entry.RecheckDate is { } seen ? Number(seen) : null, gate);
        int? interval = EndOfInterval(day, entry.Plan, entry.Place, entry.Order);
        next = next with { Dated = due, IsGate = isGate, Interval = interval };
        bool isBeyondGate = entry.Plan.Steps.Take(entry.Place.Step).Any(step => step.Gate is not null);
        // The closing that ended the plan before may have come after this was signed.
        bool isBefore = before.IsAlive || (before.LeftOn is { } left && Open(left, entry.Order).Any(before.Cases.Contains));
        bool isSeen =
            !(isBefore && before.LastDue(day) is { } waiting && !Examined(waiting, day, entry.Order))
            && !(isBeyondGate && !Examined(isBefore ? before.PlacedOn : int.MinValue, day, entry.Order));
        if (entry.IsAdvance && isSeen)
        {
            _inFull.Add((day, entry));
            return next;
        }

        if (!before.IsAlive)
        {
            _begun.Add(day);
            return next with { MayOnlyLower = [Work.None] };
        }

        Work old = Row(day, before);
        return before with
        {
            Plan = entry.Plan,
            Place = entry.Place,
            PlacedOn = day,
            PlacedBy = entry.Order,
            PlacedIn = entry.Place.Step,
            Floor = before.Floor is null || entry.Plan.Floor is null ? null : Lesser(before.Floor, entry.Plan.Floor),
            WeekMinutes = Lesser(before.WeekMinutes, entry.Plan.Caps.WeekMinutes),
            Dated = Lesser(before.Dated, due),
            Interval = Lesser(before.Interval, interval),
            MayOnlyLower = [.. before.MayOnlyLower, old],
        };
    }

    private Signed Take(int day, Signed before, DecisionSigned entry)
    {
        Decision decision = entry.Decision;
        if (!before.IsAlive)
        {
            return decision.Kind == DecisionKind.Stop ? before with { Latest = Math.Max(before.Latest, entry.Order) } : before;
        }

        bool isLatest = entry.Order > before.Latest;
        Signed now = before with { Latest = Math.Max(before.Latest, entry.Order) };
        int? until = decision.ValidUntil is { } valid ? Number(valid) : null;
        switch (decision.Kind)
        {
            case DecisionKind.Close:
                return now with { HasEnded = true };
            case DecisionKind.Stop:
                return Lowered(now with { IsStopped = true }, decision, null);
            case DecisionKind.Pause:
                bool extends = !isLatest && now.IsPausedOn(day);
                int? end =
                    !extends ? until
                    : now.PausedUntil is null || until is null ? null
                    : Math.Max(now.PausedUntil.Value, until.Value);
                return Lowered(now with { PausedFrom = day, PausedUntil = end }, decision, null);
            case DecisionKind.Advance when !isLatest:
                return now;
        }

        PlanVersion plan = now.Plan!;
        bool fits = decision.Place is { } place && place.Step >= 0 && place.Step < plan.Steps.Count && place.Days >= 0;
        PlanPlace signedPlace = SignedPlace(day, now);
        int gates = fits
            ? plan.Steps.Take(decision.Place!.Value.Step).Count(step => step.Gate is not null)
                - plan.Steps.Take(signedPlace.Step).Count(step => step.Gate is not null)
            : 0;
        bool counts =
            isLatest
            && decision.PlanVersionId == plan.Id
            && (now.LastDue(day) is not { } waiting || Examined(waiting, day, entry.Order))
            && decision.Kind switch
            {
                DecisionKind.Hold => true,
                DecisionKind.StepBack => fits && decision.Place!.Value <= signedPlace,
                _ => fits && (gates <= 0 || (gates == 1 && now.Dated <= day)),
            };
        if (!counts)
        {
            Signed lowered = Lowered(now, decision, until);
            if (decision.Kind == DecisionKind.StepBack && decision.PlanVersionId == plan.Id && decision.Place is { } back)
            {
                Work row =
                    back.Step >= 0 && back.Step < plan.Steps.Count && back.Days >= 0 ? Minutes(plan, back.Step, back.Days) : Work.None;
                lowered = lowered with { MayOnlyLower = [.. lowered.MayOnlyLower, row] };
            }

            return decision.Kind == DecisionKind.Advance ? lowered : Stay(day, lowered);
        }

        _inFull.Add((day, entry));
        now = now with
        {
            PausedFrom = null,
            PausedUntil = null,
            ValidUntil = until,
            Floor = decision.Floor ?? now.Floor,
            Cases = [.. Open(day)],
        };
        int? seen = decision.RecheckDate is { } date ? Number(date) : null;
        if (decision.Kind == DecisionKind.Hold)
        {
            return Stay(
                day,
                now with
                {
                    Limits = [.. now.Limits, decision.Limits],
                    Dated = seen ?? day + _settings.HoldDays,
                    IsGate = false,
                    Interval = plan.Steps.Take(signedPlace.Step + 1).Skip(now.PlacedIn).Min(step => step.RecheckIntervalDays) is { } rhythm
                        ? Math.Max(day, Waiting(day, entry.Order) + rhythm)
                        : null,
                }
            );
        }

        (int? due, bool isGate) = Sooner(seen, DaysToGate(plan, decision.Place!.Value) is { } days ? day + days : null);
        return now with
        {
            Place = decision.Place.Value,
            PlacedOn = day,
            PlacedBy = entry.Order,
            PlacedIn = decision.Place.Value.Step,
            WeekMinutes = plan.Caps.WeekMinutes,
            HeldOn = null,
            IsStopped = false,
            MayOnlyLower = [],
            Limits = [decision.Limits],
            Dated = due,
            IsGate = isGate,
            Interval = EndOfInterval(day, plan, decision.Place.Value, entry.Order),
        };
    }

    /// <summary>The earliest end of an interval of the steps up to the gate, each from its first day on at the earliest.</summary>
    private int? EndOfInterval(int day, PlanVersion plan, PlanPlace from, long before)
    {
        int? earliest = null;
        int first = day;
        for (int step = from.Step; step < plan.Steps.Count; step++)
        {
            if (plan.Steps[step].RecheckIntervalDays is { } interval)
            {
                earliest = Lesser(earliest, Math.Max(first, Waiting(day, before) + interval));
            }

            if (plan.Steps[step].Gate is not null)
            {
                break;
            }

            first += step == from.Step ? Math.Max(1, plan.Steps[step].ShortestDays - from.Days) : plan.Steps[step].ShortestDays;
        }

        return earliest;
    }

    /// <summary>The last examination of the open case whose last examination is longest ago; a case without one waits from the day on.</summary>
    private int Waiting(int day, long before) =>
        Open(day, before)
            .Select(id =>
                _all.OfType<ExaminationSigned>()
                    .Where(entry => !entry.IsImported && entry.CaseId == id && entry.Order < before && Number(entry.Date) <= day)
                    .Select(entry => (int?)Number(entry.Date))
                    .Max()
                ?? day
            )
            .Prepend(day)
            .Min();

    private static Signed Stay(int day, Signed signed) => signed with { HeldOn = signed.HeldOn ?? day };

    private static Signed Lowered(Signed signed, Decision decision, int? until)
    {
        int? seen = decision.RecheckDate is { } date ? Number(date) : null;
        return signed with
        {
            Limits = [.. signed.Limits, decision.Limits],
            ValidUntil = Lesser(signed.ValidUntil, until),
            Dated = Lesser(signed.Dated, seen),
            Floor = signed.Floor is not null && decision.Floor is not null ? Lesser(signed.Floor, decision.Floor) : signed.Floor,
        };
    }

    /// <summary>The days since the placing signature on which what was signed went on, one by one.</summary>
    private IEnumerable<int> SignedDays(int day, Signed now) =>
        Enumerable
            .Range(now.PlacedOn, day - now.PlacedOn)
            .Where(earlier =>
            {
                Signed then = earlier == day ? now : _days[earlier];
                return then.PlacedBy == now.PlacedBy
                    && then.IsAlive
                    && !then.IsHeld
                    && !then.IsStopped
                    && !then.IsPausedOn(earlier)
                    && !(then.ValidUntil < earlier)
                    && !(then.Due <= earlier + 1);
            });

    private PlanPlace SignedPlace(int day, Signed now) => Places(now.Plan!, now.Place, SignedDays(day, now).Count())[^1];

    private Work PlannedRow(int day, Signed now)
    {
        PlanPlace place = SignedPlace(day, now);
        return Minutes(now.Plan!, place.Step, place.Days);
    }

    /// <summary>The least of the rows between effective and signed place, with every ceiling that was signed.</summary>
    private Work Row(int day, Signed now)
    {
        int[] signed = [.. SignedDays(day, now)];
        int effective = signed.Count(earlier => _counted[earlier]);
        PlanPlace[] places = Places(now.Plan!, now.Place, signed.Length);
        Work row = places[effective..].Select(place => Minutes(now.Plan!, place.Step, place.Days)).Aggregate(Lesser);
        foreach (OutingLimits? limits in now.Limits)
        {
            if (limits is not null)
            {
                OutingMinutes outing = new(
                    Math.Min(row.Outing.Walk, limits.Walk ?? 9999),
                    Math.Min(row.Outing.Trot, limits.Trot ?? 9999),
                    Math.Min(row.Outing.Canter, limits.Canter ?? 9999),
                    Math.Min(row.Outing.Gallop, limits.Gallop ?? 9999)
                );
                row = Lesser(row, row with { Outing = outing });
            }
        }

        return now.MayOnlyLower.Aggregate(row, Lesser);
    }

    /// <summary>The place after 0, 1, … days from a place, up to the gate.</summary>
    private static PlanPlace[] Places(PlanVersion plan, PlanPlace from, int days)
    {
        List<PlanPlace> places = [from];
        while (places.Count <= days)
        {
            PlanPlace last = places[^1];
            PlanStep step = plan.Steps[last.Step];
            bool isOver = last.Days + 1 >= step.ShortestDays;
            bool isLast = last.Step + 1 == plan.Steps.Count;
            places.Add(
                isLast || !isOver ? new PlanPlace(last.Step, last.Days + 1)
                : step.Gate is null ? new PlanPlace(last.Step + 1, 0)
                : last
            );
        }

        return [.. places];
    }

    private static int? DaysToGate(PlanVersion plan, PlanPlace from)
    {
        if (!plan.Steps.Skip(from.Step).SkipLast(1).Any(step => step.Gate is not null))
        {
            return null;
        }

        int days = Math.Max(1, plan.Steps[from.Step].ShortestDays - from.Days);
        int at = from.Step;
        while (plan.Steps[at].Gate is null)
        {
            at++;
            days += plan.Steps[at].ShortestDays;
        }

        return days;
    }

    /// <summary>One row, with the caps found by taking away a minute, an outing, a day at a time.</summary>
    private static Work Minutes(PlanVersion plan, int index, int days)
    {
        PlanStep step = plan.Steps[index];
        int[] gaits =
        [
            .. new[] { step.Walk, step.Trot, step.Canter, step.Gallop }.Select(rule =>
            {
                int minutes = rule?.Start ?? 0;
                for (int week = 7; rule is { GrowthPerWeek: > 0 } && week <= days; week += 7)
                {
                    minutes = Math.Min(minutes + rule.GrowthPerWeek, rule.Ceiling ?? 0);
                }

                return minutes;
            }),
        ];
        int outings = step.OutingsADay ?? 0;
        int week = step.DaysAWeek ?? 0;
        int most = new[] { plan.Caps.OutingMinutes, plan.Caps.DayMinutes, plan.Caps.WeekMinutes }.Min() ?? int.MaxValue;
        while (gaits.Sum() > most)
        {
            gaits[Array.FindLastIndex(gaits, minutes => minutes > 0)]--;
        }

        int dayCap = new[] { plan.Caps.DayMinutes, plan.Caps.WeekMinutes }.Min() ?? int.MaxValue;
        while (outings * gaits.Sum() > dayCap)
        {
            outings--;
        }

        while (week * outings * gaits.Sum() > (plan.Caps.WeekMinutes ?? int.MaxValue))
        {
            week--;
        }

        bool isNone = gaits.Sum() == 0 || outings == 0 || week == 0 || step.Modes == WorkModes.None || step.Surfaces == Surfaces.None;
        return isNone
            ? new Work { Turnout = step.Turnout ?? Turnout.None }
            : new Work
            {
                Outing = new OutingMinutes(gaits[0], gaits[1], gaits[2], gaits[3]),
                OutingsADay = outings,
                DaysAWeek = week,
                Modes = step.Modes,
                Circles = step.Circles ?? Circles.None,
                Surfaces = step.Surfaces,
                Turnout = step.Turnout ?? Turnout.None,
            };
    }

    private static Work Lesser(Work one, Work other)
    {
        Work least = new()
        {
            Outing = new OutingMinutes(
                Math.Min(one.Outing.Walk, other.Outing.Walk),
                Math.Min(one.Outing.Trot, other.Outing.Trot),
                Math.Min(one.Outing.Canter, other.Outing.Canter),
                Math.Min(one.Outing.Gallop, other.Outing.Gallop)
            ),
            OutingsADay = Math.Min(one.OutingsADay, other.OutingsADay),
            DaysAWeek = Math.Min(one.DaysAWeek, other.DaysAWeek),
            Modes = one.Modes & other.Modes,
            Circles = one.Circles < other.Circles ? one.Circles : other.Circles,
            Surfaces = one.Surfaces & other.Surfaces,
            Turnout = one.Turnout < other.Turnout ? one.Turnout : other.Turnout,
        };
        return least.HasOuting ? least : new Work { Turnout = least.Turnout };
    }

    private static int? Lesser(int? one, int? other) => new[] { one, other }.Min();

    private static (int? Due, bool IsGate) Sooner(int? recheck, int? gate) =>
        gate is null || recheck < gate ? (recheck, false) : (gate, true);

    private static Work Everything { get; } =
        new()
        {
            Outing = new OutingMinutes(9999, 9999, 9999, 9999),
            OutingsADay = 99,
            DaysAWeek = 7,
            Modes = WorkModes.InHand | WorkModes.Ridden | WorkModes.LongRein,
            Circles = Circles.Any,
            Surfaces = Surfaces.FirmEven | Surfaces.Soft | Surfaces.Hard | Surfaces.Uneven,
            Turnout = Turnout.Field,
        };

    private static int Number(DateOnly date) => date.DayNumber - Story.Day0.DayNumber;

    /// <summary>The cases open on a day, as far as their closing was known before something was recorded.</summary>
    private IEnumerable<string> Open(int day, long before = long.MaxValue) =>
        _all.OfType<CaseOpened>()
            .Where(opened => Math.Max(Number(opened.Date), Number(opened.RecordedOn)) <= day)
            .Where(opened =>
                _all.OfType<CaseClosed>()
                    .All(closed =>
                        closed.CaseId != opened.CaseId
                        || Number(closed.Date) > day
                        || Number(closed.RecordedOn) > day
                        || closed.Order < opened.Order
                        || closed.Order > before
                    )
            )
            .Select(opened => opened.CaseId);

    private bool Examined(int since, int until, long before) =>
        Open(until, before).Any()
        && Open(until, before)
            .All(id =>
                _all.OfType<ExaminationSigned>()
                    .Any(entry =>
                        !entry.IsImported
                        && entry.CaseId == id
                        && entry.Order < before
                        && Number(entry.Date) >= since
                        && Number(entry.Date) <= until
                    )
            );

    private bool Worries(int day) =>
        _all.Any(entry =>
            entry switch
            {
                ConcernOpened concern => Math.Min(Number(concern.Date), Number(concern.RecordedOn)) <= day,
                DayLogged { Log.HasSign: true } logged => Math.Min(Number(logged.Log.Date), Number(logged.RecordedOn)) <= day,
                _ => false,
            } && !_inFull.Any(full => full.Day <= day && full.Entry.Order > entry.Order)
        );

    /// <summary>Entries for a time that cover a day and that no later signature in full has lifted since they began.</summary>
    private List<T> Covering<T>(int day)
        where T : PermitEntry =>
        [
            .. _all.OfType<T>()
                .Where(entry =>
                {
                    (DateOnly from, DateOnly? until) = entry switch
                    {
                        WorkLowered lowered => (lowered.From, lowered.Until),
                        WorkPaused paused => (paused.From, paused.Until),
                        HoldPlaced { Kind: PermitHoldKind.VetWithdrawn } hold => (hold.From, null),
                        HoldPlaced hold => (hold.From, hold.Until),
                        _ => (DateOnly.MaxValue, null),
                    };
                    return Number(from) <= day
                        && (until is null || day <= Number(until.Value))
                        && !_inFull.Any(full => full.Day >= Number(from) && full.Day <= day && full.Entry.Order > entry.Order);
                }),
        ];

    private sealed record Signed
    {
        public long Latest { get; init; } = long.MinValue;
        public PlanVersion? Plan { get; init; }
        public bool IsBroken { get; init; }
        public bool HasEnded { get; init; }
        public int? LeftOn { get; init; }
        public PlanPlace Place { get; init; }
        public int PlacedOn { get; init; }
        public long PlacedBy { get; init; }
        public int? HeldOn { get; init; }
        public bool IsStopped { get; init; }
        public int? PausedFrom { get; init; }
        public int? PausedUntil { get; init; }
        public int? ValidUntil { get; init; }
        public int PlacedIn { get; init; }
        public int? WeekMinutes { get; init; }
        public int? Dated { get; init; }
        public int? Interval { get; init; }
        public int? Due => Lesser(Dated, Interval);
        public bool IsGate { get; init; }
        public Work? Floor { get; init; }
        public IReadOnlyList<OutingLimits?> Limits { get; init; } = [];
        public IReadOnlyList<Work> MayOnlyLower { get; init; } = [];
        public IReadOnlyList<string> Cases { get; init; } = [];
        public bool IsHeld => HeldOn is not null;
        public bool IsAlive => Plan is not null && !IsBroken && !HasEnded;

        public int? LastDue(int day) =>
            Dated <= day ? Dated
            : Interval <= day ? Interval
            : null;

        public bool IsPausedOn(int day) => PausedFrom <= day && (PausedUntil is null || day <= PausedUntil);
    }
}
