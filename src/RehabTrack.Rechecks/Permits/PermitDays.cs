using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>
/// Goes through the days of a history and says the permit of each. Beside the signed line it keeps the effective place, which can only
/// fall behind, and what drops the work; whether a day counts never depends on how far behind the horse is.
/// </summary>
internal sealed class PermitDays
{
    private readonly PermitEntry[] _entries;
    private readonly PermitSettings _settings;
    private readonly SignedLine _line;
    private readonly ConcernOpened[] _concerns;
    private readonly DayLogged[] _signs;
    private readonly HoldPlaced[] _holds;
    private readonly HoldEnded[] _ends;
    private readonly WorkPaused[] _pauses;
    private readonly WorkLowered[] _lowerings;
    private readonly HashSet<DateOnly> _logged;
    private readonly Dictionary<DateOnly, int> _done;
    private readonly HashSet<long> _lifted = [];
    private DateOnly _day;
    private PlanPlace _place;
    private int _placings;
    private Work? _cap;
    private DateOnly _contact;
    private int _daysOut;
    private DateOnly? _awaySince;
    private bool _hasCounted;
    private long _signedOrder = long.MinValue;

    public PermitDays(PermitHistory history, PermitSettings settings)
    {
        _entries = [.. history.Entries.OrderBy(entry => entry.Order)];
        _settings = settings;
        _line = new SignedLine(_entries, settings);
        _concerns = [.. _entries.OfType<ConcernOpened>()];
        _signs = [.. _entries.OfType<DayLogged>().Where(entry => entry.Log.HasSign)];
        _holds = [.. _entries.OfType<HoldPlaced>()];
        _ends = [.. _entries.OfType<HoldEnded>()];
        _pauses = [.. _entries.OfType<WorkPaused>()];
        _lowerings = [.. _entries.OfType<WorkLowered>()];
        _logged =
        [
            .. _entries
                .OfType<DayLogged>()
                .Where(entry => !entry.IsImported)
                .Where(entry =>
                    entry.RecordedOn.DayNumber - entry.Log.Date.DayNumber is var late && late >= 0 && late <= settings.LogInTimeDays
                )
                .Select(entry => entry.Log.Date),
        ];
        _done = _entries
            .OfType<DayLogged>()
            .Where(entry => entry.Log.Done.Total > 0)
            .GroupBy(entry => entry.Log.Date)
            .ToDictionary(day => day.Key, day => day.Sum(entry => entry.Log.Done.Total));
    }

    /// <summary>The permits of successive days.</summary>
    public IReadOnlyList<Permit> Between(DateOnly from, DateOnly to)
    {
        DateOnly start = _entries
            .Where(entry => entry is PlanSigned or DecisionSigned)
            .Select(entry => entry.RecordedOn)
            .Append(from)
            .Min();
        List<Permit> permits = [];
        for (_day = start; _day <= to.AddDays(_settings.PrintDays); _day = _day.AddDays(1))
        {
            GoOn();
            if (_day >= from)
            {
                permits.Add(Read());
            }
        }

        int asked = Math.Max(0, to.DayNumber - from.DayNumber + 1);
        return [.. Enumerable.Range(0, asked).Select(index => permits[index] with { VoidAfter = VoidAfter(permits, index) })];
    }

    private DateOnly VoidAfter(List<Permit> permits, int index)
    {
        int last = index;
        while (last + 1 < permits.Count && last + 1 - index <= _settings.PrintDays && permits[index].Work.IsWithin(permits[last + 1].Work))
        {
            last++;
        }

        return permits[last].Date;
    }

    private void GoOn()
    {
        _line.GoTo(_day);
        if (_line.HasMoved && _hasCounted)
        {
            _place = PlanRows.Next(_line.Plan!, _place);
        }

        int beginnings = _line.Beginnings;
        _line.Sign(_day, Lift, KeepBelow);
        TakePlace();
        if (_line.Beginnings > beginnings)
        {
            Forget();
        }

        _hasCounted = _line.IsAlive && Counts();
    }

    /// <summary>A plan that is no advance permits at most what the one before it did, be that one of the same day.</summary>
    private void KeepBelow()
    {
        TakePlace();
        _cap = SignedRow();
    }

    /// <summary>Stands where a signature placed the horse since this was last asked, if one did.</summary>
    private void TakePlace()
    {
        if (_placings != _line.Placings)
        {
            (_placings, _place) = (_line.Placings, _line.Place);
        }
    }

    /// <summary>A vet's signature that counts in full lifts what was recorded before it.</summary>
    private void Lift(PermitEntry signed)
    {
        if (signed is not DecisionSigned { Decision.Kind: DecisionKind.Hold })
        {
            _cap = null;
        }

        _signedOrder = signed.Order;
        _lifted.UnionWith(_holds.Where(hold => hold.Order < signed.Order && hold.From <= _day).Select(hold => hold.Order));
        _lifted.UnionWith(_pauses.Where(pause => pause.Order < signed.Order && pause.From <= _day).Select(pause => pause.Order));
        _lifted.UnionWith(
            _lowerings.Where(lowering => lowering.Order < signed.Order && lowering.From <= _day).Select(lowering => lowering.Order)
        );
        Forget();
    }

    private void Forget() => (_awaySince, _daysOut, _contact) = (null, 0, _day);

    /// <summary>Whether this day is a day of effective time, which shows tomorrow. Nothing here asks how far behind the horse is.</summary>
    private bool Counts()
    {
        Work row = PlanRows.At(_line.Plan!, _line.Place);
        bool isPausedByVet = _line.PauseOn(_day) is not null;
        if (_day.DayNumber - _contact.DayNumber > _settings.AwayDays)
        {
            _awaySince ??= _day;
        }

        Work? limit = LimitOf(Lowerings());
        bool isOut = isPausedByVet || Pauses().Any() || (limit is not null && !(row.HasOuting ? Work.Least(row, limit) : limit).HasOuting);
        _daysOut = isOut ? _daysOut + 1 : 0;
        if (_daysOut > _settings.AwayDays)
        {
            _awaySince ??= _day;
        }

        if (_logged.Contains(_day) || isPausedByVet || !row.HasOuting)
        {
            _contact = _day;
        }

        return !isOut && _awaySince is null && !IsLogMissing && limit is null && !Concerns().Any() && !Signs().Any() && !Holds().Any();
    }

    private bool IsLogMissing => _day.DayNumber - _contact.DayNumber >= _settings.LogGapDays;

    private IEnumerable<ConcernOpened> Concerns() =>
        _concerns.Where(entry => entry.Order > _signedOrder && (entry.Date <= _day || entry.RecordedOn <= _day));

    private IEnumerable<DayLogged> Signs() =>
        _signs.Where(entry => entry.Order > _signedOrder && (entry.Log.Date <= _day || entry.RecordedOn <= _day));

    private IEnumerable<HoldPlaced> Holds() =>
        _holds.Where(entry =>
            entry.From <= _day
            && !_lifted.Contains(entry.Order)
            && (
                entry.Kind == PermitHoldKind.VetWithdrawn
                || (!(entry.Until < _day) && !_ends.Any(end => end.Kind == entry.Kind && end.Order > entry.Order && end.From <= _day))
            )
        );

    private IEnumerable<WorkPaused> Pauses() =>
        _pauses.Where(entry => entry.From <= _day && !(entry.Until < _day) && !_lifted.Contains(entry.Order));

    private IEnumerable<WorkLowered> Lowerings() =>
        _lowerings.Where(entry => entry.From <= _day && !(entry.Until < _day) && !_lifted.Contains(entry.Order));

    private static Work? LimitOf(IEnumerable<WorkLowered> lowerings) =>
        lowerings
            .Select(lowering => lowering.AtMost)
            .Aggregate((Work?)null, (least, next) => least is null ? next : Work.Least(least, next));

    /// <summary>The least of the rows from the effective place to the signed one, with the ceilings and limits that a vet signed.</summary>
    private Work SignedRow()
    {
        PlanVersion plan = _line.Plan!;
        Work row = PlanRows.At(plan, _line.Place);
        for (PlanPlace place = _place; place < _line.Place; place = NextRow(plan, place))
        {
            row = Work.Least(row, PlanRows.At(plan, place));
        }

        if (_line.Limits is { } limits)
        {
            row = (row with { Outing = limits.On(row.Outing) }).Settled();
        }

        row = _line.Cap is { } cap ? Work.Least(row, cap) : row;
        return _cap is null ? row : Work.Least(row, _cap);
    }

    /// <summary>The place at which the next row of the stretch begins: the next week of the step, or the next step.</summary>
    private static PlanPlace NextRow(PlanVersion plan, PlanPlace place)
    {
        int nextWeek = (place.Week + 1) * PlanRows.DaysOfWeek;
        return place.Step == plan.Steps.Count - 1 || nextWeek < plan.Steps[place.Step].ShortestDays
            ? place with
            {
                Days = nextWeek,
            }
            : new PlanPlace(place.Step + 1, 0);
    }

    private Permit Read()
    {
        List<PermitReason> reasons = [];
        if (_line.Plan is null || _line.HasProblems || _line.Ended is not null)
        {
            PermitReason reason =
                _line.Plan is null ? new(PermitReasonCode.NoPlan)
                : _line.HasProblems ? new(PermitReasonCode.PlanHasProblems) { Since = _line.SignedOn }
                : _line.Ended!;
            return Of(_line.Ended is null ? PermitState.NothingSigned : PermitState.Closed, Work.None, Work.None, Work.None, [reason]);
        }

        Work row = SignedRow();
        WorkLowered[] lowerings = [.. Lowerings()];
        Work signed = LimitOf(lowerings) is { } limit ? Work.Least(row, limit) : row;

        AddStops(reasons);
        int stops = reasons.Count;
        AddPauses(reasons);
        int pauses = reasons.Count;
        AddConcerns(reasons);
        int concerns = reasons.Count;
        AddLapses(reasons);
        int lapses = reasons.Count;
        AddHolds(reasons);
        reasons.AddRange(lowerings.Select(entry => new PermitReason(PermitReasonCode.Lowered) { Since = entry.From, Until = entry.Until }));
        int holds = reasons.Count;

        PermitState state =
            stops > 0 ? PermitState.Stopped
            : pauses > 0 ? PermitState.Paused
            : concerns > 0 ? PermitState.Floor
            : lapses > 0 ? PermitState.Lapsed
            : holds > 0 ? PermitState.Held
            : PermitState.Live;
        bool isFloor = state is PermitState.Floor or PermitState.Lapsed;
        Work ofDay =
            state is PermitState.Stopped or PermitState.Paused ? Work.None
            : isFloor ? Work.Least(signed, _line.Floor ?? Work.None)
            : signed;
        if (isFloor && _line.Floor is null)
        {
            reasons.Add(new PermitReason(PermitReasonCode.NoFloor));
        }

        (Work work, PermitReason? ofWeek) = InWeek(ofDay);
        if (ofWeek is not null)
        {
            reasons.Insert(state is PermitState.Live or PermitState.Held ? 0 : reasons.Count, ofWeek);
        }

        AddGround(reasons);
        return Of(state, work, ofDay, signed, reasons);
    }

    /// <summary>
    /// What of a day's work the days before it in its week, Monday to Sunday, leave. Whatever was logged, and whenever, can only lower it;
    /// whether a day counts does not ask for it.
    /// </summary>
    private (Work Work, PermitReason? Reason) InWeek(Work work)
    {
        if (!work.HasOuting)
        {
            return (work, null);
        }

        DateOnly monday = _day.AddDays(-(((int)_day.DayOfWeek + 6) % PlanRows.DaysOfWeek));
        int[] done =
        [
            .. Enumerable.Range(0, _day.DayNumber - monday.DayNumber).Select(day => _done.GetValueOrDefault(monday.AddDays(day))),
        ];
        int worked = done.Count(minutes => minutes > 0);
        if (worked >= work.DaysAWeek)
        {
            return (
                new Work { Turnout = work.Turnout },
                new PermitReason(PermitReasonCode.RestDay) { Done = worked, Most = work.DaysAWeek }
            );
        }

        Work left = _line.WeekMinutes is { } most ? new PlanCaps(DayMinutes: Math.Max(0, most - done.Sum())).On(work) : work;
        return (
            left,
            left == work ? null : new PermitReason(PermitReasonCode.WeekMinutesDone) { Done = done.Sum(), Most = _line.WeekMinutes }
        );
    }

    private void AddStops(List<PermitReason> reasons)
    {
        if (_line.StoppedOn is { } stoppedOn)
        {
            reasons.Add(new PermitReason(PermitReasonCode.Stopped) { Since = stoppedOn });
        }

        reasons.AddRange(
            Holds()
                .Where(hold => hold.Kind == PermitHoldKind.VetWithdrawn)
                .Select(hold => new PermitReason(PermitReasonCode.VetWithdrawn) { Since = hold.From })
        );
    }

    private void AddPauses(List<PermitReason> reasons)
    {
        if (_line.PauseOn(_day) is var (from, until))
        {
            reasons.Add(new PermitReason(PermitReasonCode.PausedByVet) { Since = from, Until = until });
        }

        reasons.AddRange(
            Pauses().Select(pause => new PermitReason(PermitReasonCode.PausedByPerson) { Since = pause.From, Until = pause.Until })
        );
    }

    private void AddConcerns(List<PermitReason> reasons)
    {
        reasons.AddRange(Concerns().Select(concern => new PermitReason(PermitReasonCode.Concern) { Since = concern.Date }));
        reasons.AddRange(Signs().Select(sign => new PermitReason(PermitReasonCode.SignInLog) { Since = sign.Log.Date }));
        if (_awaySince is { } since)
        {
            reasons.Add(new PermitReason(PermitReasonCode.AwayTooLong) { Since = since, Days = _settings.AwayDays });
        }
    }

    private void AddLapses(List<PermitReason> reasons)
    {
        if (_line.GraceEnds < _day)
        {
            reasons.Add(
                new PermitReason(_line.IsGateDue ? PermitReasonCode.GateMissed : PermitReasonCode.RecheckMissed) { Since = _line.Due }
            );
        }

        if (_line.ValidUntil < _day)
        {
            reasons.Add(new PermitReason(PermitReasonCode.SignatureOver) { Since = _line.ValidUntil });
        }
    }

    private void AddHolds(List<PermitReason> reasons)
    {
        if (_line.Due <= _day && _line.GraceEnds >= _day)
        {
            reasons.Add(
                new PermitReason(_line.IsGateDue ? PermitReasonCode.GateDue : PermitReasonCode.RecheckDue)
                {
                    Since = _line.Due,
                    Until = _line.GraceEnds,
                }
            );
        }

        foreach (HoldPlaced hold in Holds())
        {
            switch (hold.Kind)
            {
                case PermitHoldKind.Setback:
                    reasons.Add(new PermitReason(PermitReasonCode.Setback) { Since = hold.From });
                    break;
                case PermitHoldKind.UnsignedSetback:
                    reasons.Add(new PermitReason(PermitReasonCode.UnsignedSetback) { Since = hold.From });
                    break;
                case PermitHoldKind.BasisChanged:
                    reasons.Add(new PermitReason(PermitReasonCode.BasisChanged) { Since = hold.From });
                    break;
            }
        }

        if (_line.HeldOn is { } heldOn)
        {
            reasons.Add(new PermitReason(PermitReasonCode.HeldByVet) { Since = heldOn });
        }

        if (_awaySince is null && IsLogMissing)
        {
            reasons.Add(new PermitReason(PermitReasonCode.NoLog) { Since = _contact, Days = _day.DayNumber - _contact.DayNumber });
        }
    }

    /// <summary>What the figures rest on: the step, and what keeps them below its row.</summary>
    private void AddGround(List<PermitReason> reasons)
    {
        PlanStep step = _line.Plan!.Steps[_place.Step];
        reasons.Add(new PermitReason(PermitReasonCode.Step) { Step = step.Name, Week = _place.Week + 1 });
        if (!PlanRows.IsFilled(step))
        {
            reasons.Add(new PermitReason(PermitReasonCode.StepUnfilled) { Step = step.Name });
        }

        if (_place < _line.Place)
        {
            reasons.Add(
                new PermitReason(PermitReasonCode.BehindSignedWeeks) { Days = PlanRows.DaysBetween(_line.Plan, _place, _line.Place) }
            );
        }

        if (_line.Limits is not null)
        {
            reasons.Add(new PermitReason(PermitReasonCode.LowerCeilings));
        }

        if (PlanRows.IsCapped(_line.Plan, _place))
        {
            reasons.Add(new PermitReason(PermitReasonCode.Capped));
        }

        reasons.AddRange(_line.Notes);
    }

    private Permit Of(PermitState state, Work work, Work ofDay, Work signed, IReadOnlyList<PermitReason> reasons) =>
        new()
        {
            Date = _day,
            State = state,
            Work = work,
            BeforeWeek = ofDay,
            SignedWork = signed,
            Source = _line.IsAlive
                ? new(_line.Plan!.Id, _line.Plan.Number, _place, _line.Place, _line.Plan.Steps[_place.Step].Name, _line.SignedOn)
                : null,
            Reasons = reasons,
            Due = _line.IsAlive ? _line.Due : null,
            IsGateDue = _line.IsAlive && _line.IsGateDue,
            GraceEnds = _line.IsAlive ? _line.GraceEnds : null,
            VoidAfter = _day,
        };
}
