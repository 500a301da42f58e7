using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>
/// What was signed, day by day: the plan in force, the place that the signatures would have the horse at had no day been lost, the due
/// date, and what a vet stopped, paused, closed or lowered. It reads signatures and cases only, so nothing unsigned can move it.
/// </summary>
internal sealed class SignedLine(IEnumerable<PermitEntry> entries, PermitSettings settings)
{
    private readonly CaseBook _cases = new(entries);
    private readonly PermitEntry[] _signatures =
    [
        .. entries.Where(entry => !entry.IsImported && entry is PlanSigned or DecisionSigned).OrderBy(entry => entry.Order),
    ];
    private readonly List<PermitReason> _notes = [];
    private HashSet<string> _covered = new(StringComparer.Ordinal);
    private long _latest = long.MinValue;
    private DateOnly? _stoppedOn;
    private DateOnly? _heldOn;
    private (DateOnly From, DateOnly? Until)? _pause;
    private DateOnly? _namedDue;
    private bool _isGate;
    private int _placedIn;
    private DateOnly? _intervalEnd;

    /// <summary>The plan in force; null before the first, with a closed one still named.</summary>
    public PlanVersion? Plan { get; private set; }

    /// <summary>Where the signatures would have the horse stand.</summary>
    public PlanPlace Place { get; private set; }

    /// <summary>The day from which the placing signature counts.</summary>
    public DateOnly SignedOn { get; private set; }

    /// <summary>Lower ceilings than the plan's.</summary>
    public OutingLimits? Limits { get; private set; }

    /// <summary>The most that signatures leave which could only lower; null for no such limit.</summary>
    public Work? Cap { get; private set; }

    /// <summary>The work signed for bad days; null for none.</summary>
    public Work? Floor { get; private set; }

    /// <summary>Most minutes of a calendar week; null for no cap.</summary>
    public int? WeekMinutes { get; private set; }

    /// <summary>
    /// The day on which growth stops for a recheck: that of the gate or the date that a vet named, or the end of the interval signed with
    /// a step when that comes before.
    /// </summary>
    public DateOnly? Due => Earliest(_namedDue, _intervalEnd);

    /// <summary>Whether the due date is that of a gate.</summary>
    public bool IsGateDue => _isGate && !(_intervalEnd < _namedDue);

    /// <summary>The last day of the signature; null for no end.</summary>
    public DateOnly? ValidUntil { get; private set; }

    /// <summary>Why the plan has ended; null while it has not.</summary>
    public PermitReason? Ended { get; private set; }

    /// <summary>Whether the plan in force has problems.</summary>
    public bool HasProblems { get; private set; }

    /// <summary>Whether the place moved on from yesterday to today.</summary>
    public bool HasMoved { get; private set; }

    /// <summary>How often a signature placed the horse.</summary>
    public int Placings { get; private set; }

    /// <summary>
    /// The shortest interval between rechecks, in days, that the steps name from the one in which the last signature placed the horse to
    /// the one in which the line stands; null when none of them names one.
    /// </summary>
    public int? IntervalDays => Plan!.Steps.Take(Place.Step + 1).Skip(_placedIn).Min(step => step.RecheckIntervalDays);

    /// <summary>How often a plan that is no advance began with none in force before it.</summary>
    public int Beginnings { get; private set; }

    /// <summary>The last day before a missed recheck drops the work to the floor.</summary>
    public DateOnly? GraceEnds => Due?.AddDays(settings.GraceDays);

    /// <summary>Decisions that could only lower, since the last one that counted in full.</summary>
    public IReadOnlyList<PermitReason> Notes => _notes;

    /// <summary>Since when a vet's stop stands.</summary>
    public DateOnly? StoppedOn => _stoppedOn;

    /// <summary>Since when a vet's hold stands.</summary>
    public DateOnly? HeldOn => _heldOn;

    /// <summary>Whether there is a plan that permits anything at all.</summary>
    public bool IsAlive => Plan is not null && !HasProblems && Ended is null;

    /// <summary>The vet's pause that covers a day; null when none does.</summary>
    public (DateOnly From, DateOnly? Until)? PauseOn(DateOnly day) =>
        _pause is { } pause && day >= pause.From && (pause.Until is null || day <= pause.Until) ? pause : null;

    /// <summary>Whether every open case has an examination signed here, on one of these days, before this was recorded.</summary>
    public bool IsExamined(DateOnly since, DateOnly until, long before) => _cases.AreExamined(since, until, before);

    /// <summary>Goes on to a day; the days are given one after the other, each followed by <see cref="Sign(DateOnly, Action{PermitEntry}, Action)"/>.</summary>
    /// <param name="day">The day.</param>
    public void GoTo(DateOnly day)
    {
        HasMoved = IsAlive && IsGrowing(day.AddDays(-1)) && !(Due <= day);
        if (HasMoved)
        {
            Place = PlanRows.Next(Plan!, Place);
        }
    }

    /// <summary>Takes in what was signed from a day on.</summary>
    /// <param name="day">The day.</param>
    /// <param name="onSigned">Called for each signature that counts in full, after it counts.</param>
    /// <param name="onReplaced">Called before a plan takes the place of another that it may not exceed.</param>
    public void Sign(DateOnly day, Action<PermitEntry> onSigned, Action onReplaced)
    {
        foreach (PermitEntry entry in _signatures)
        {
            switch (entry)
            {
                case PlanSigned plan when day == Later(plan.From, plan.RecordedOn):
                    EndWithoutCase(day, plan.Order);
                    Sign(plan, day, onSigned, onReplaced);
                    break;
                case DecisionSigned decision when day == Later(decision.Decision.From, decision.RecordedOn):
                    EndWithoutCase(day, decision.Order);
                    Sign(decision, day, onSigned);
                    break;
            }
        }

        EndWithoutCase(day, long.MaxValue);
    }

    private static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;

    private static DateOnly? Latest(DateOnly? one, DateOnly? other) => one is null || other is null ? null : Later(one.Value, other.Value);

    private static DateOnly? Earliest(DateOnly? one, DateOnly? other) => one is null || other < one ? other : one;

    private bool IsGrowing(DateOnly day) =>
        _heldOn is null && _stoppedOn is null && PauseOn(day) is null && !(ValidUntil < day) && !(Due <= day);

    private void EndWithoutCase(DateOnly day, long before)
    {
        if (IsAlive && !_cases.OpenOn(day, before).Any(_covered.Contains))
        {
            Ended = new PermitReason(PermitReasonCode.NoOpenCase) { Since = day };
        }
    }

    private void Sign(PlanSigned signed, DateOnly day, Action<PermitEntry> onSigned, Action onReplaced)
    {
        if (signed.Order < _latest)
        {
            return;
        }

        _latest = signed.Order;
        bool follows = IsAlive;
        if (PlanRules.Check(signed.Plan).Count > 0 || !IsIn(signed.Plan, signed.Place))
        {
            Clear();
            (Plan, HasProblems, SignedOn) = (signed.Plan, true, day);
            return;
        }

        // A case that was put away after this was signed spares the plan no examination.
        bool followed =
            follows
            || (
                Ended is { Code: PermitReasonCode.NoOpenCase, Since: { } ended }
                && _cases.OpenOn(ended, signed.Order).Any(_covered.Contains)
            );
        bool hasExamination =
            (!followed || IsLastDueExamined(day, signed.Order))
            && (
                PlanRows.StretchOf(signed.Plan, signed.Place.Step) == 0
                || IsExamined(followed ? SignedOn : DateOnly.MinValue, day, signed.Order)
            );
        DateOnly? gate = PlanRows.DaysToGate(signed.Plan, signed.Place) is { } days ? day.AddDays(days) : null;
        if (signed.IsAdvance && hasExamination)
        {
            Clear();
            _covered = [.. _cases.OpenOn(day)];
            (Floor, Limits, ValidUntil, WeekMinutes) = (signed.Plan.Floor, null, null, signed.Plan.Caps.WeekMinutes);
            PlaceIn(signed.Plan, signed.Place, day);
            SetDue(signed.RecheckDate, gate);
            _intervalEnd = IntervalEndFrom(day, signed.Order);
            onSigned(signed);
            return;
        }

        (DateOnly? namedDue, bool isGate, DateOnly? intervalEnd) = (_namedDue, _isGate, _intervalEnd);
        SetDue(signed.RecheckDate, gate);
        if (follows)
        {
            onReplaced();
            Floor = Floor is null || signed.Plan.Floor is null ? null : Work.Least(Floor, signed.Plan.Floor);
            WeekMinutes = Lowest(WeekMinutes, signed.Plan.Caps.WeekMinutes);
            (_namedDue, _isGate) = namedDue <= _namedDue || _namedDue is null ? (namedDue, isGate) : (_namedDue, _isGate);
        }
        else
        {
            Beginnings++;
            Clear();
            _covered = [.. _cases.OpenOn(day)];
            (Floor, Limits, ValidUntil, Cap) = (signed.Plan.Floor, null, null, Work.None);
            (WeekMinutes, intervalEnd) = (signed.Plan.Caps.WeekMinutes, null);
        }

        PlaceIn(signed.Plan, signed.Place, day);
        _intervalEnd = Earliest(intervalEnd, IntervalEndFrom(day, signed.Order));
        _notes.Add(
            new PermitReason(hasExamination ? PermitReasonCode.PlanNotAdvance : PermitReasonCode.DecisionWithoutExamination) { Since = day }
        );
    }

    private void Sign(DecisionSigned signed, DateOnly day, Action<PermitEntry> onSigned)
    {
        Decision decision = signed.Decision;
        if (!IsAlive)
        {
            // A plan signed before a stop does not begin after it, though none was in force when the stop came.
            _latest = decision.Kind == DecisionKind.Stop ? Math.Max(_latest, signed.Order) : _latest;
            return;
        }

        bool isLatest = signed.Order > _latest;
        _latest = Math.Max(_latest, signed.Order);
        switch (decision.Kind)
        {
            case DecisionKind.Close:
                Ended = new PermitReason(PermitReasonCode.PlanClosed) { Since = day };
                return;
            case DecisionKind.Stop:
                _stoppedOn ??= day;
                Lower(decision, null);
                return;
            case DecisionKind.Pause:
                // A pause signed before the latest decision can make the one that stands longer, never shorter.
                _pause = (
                    day,
                    isLatest || PauseOn(day) is not { } standing ? decision.ValidUntil : Latest(standing.Until, decision.ValidUntil)
                );
                Lower(decision, null);
                return;
            case DecisionKind.Advance when !isLatest:
                return;
        }

        if (Lacks(signed, day, isLatest) is { } lack)
        {
            _notes.Add(new PermitReason(lack) { Since = day });
            if (decision.Kind != DecisionKind.Advance)
            {
                _heldOn ??= day;
            }

            Lower(decision, decision.ValidUntil);
            if (decision.Kind == DecisionKind.StepBack && decision.PlanVersionId == Plan!.Id && decision.Place is { } back)
            {
                Cap = Cap is null ? PlanRows.At(Plan, back) : Work.Least(Cap, PlanRows.At(Plan, back));
            }

            return;
        }

        _notes.Clear();
        _pause = null;
        _covered = [.. _cases.OpenOn(day)];
        ValidUntil = decision.ValidUntil;
        Floor = decision.Floor ?? Floor;
        if (decision.Kind == DecisionKind.Hold)
        {
            _heldOn = day;
            Limits = Lowest(Limits, decision.Limits);
            (_namedDue, _isGate) = (decision.RecheckDate ?? day.AddDays(settings.HoldDays), false);
            _intervalEnd = IntervalDays is { } interval ? Later(day, _cases.WaitingSince(day, signed.Order).AddDays(interval)) : null;
        }
        else
        {
            Clear();
            (Limits, WeekMinutes) = (decision.Limits, Plan!.Caps.WeekMinutes);
            PlaceIn(Plan, decision.Place!.Value, day);
            SetDue(decision.RecheckDate, PlanRows.DaysToGate(Plan, Place) is { } days ? day.AddDays(days) : null);
            _intervalEnd = IntervalEndFrom(day, signed.Order);
        }

        onSigned(signed);
    }

    /// <summary>What keeps a decision from counting in full; null when nothing does.</summary>
    private PermitReasonCode? Lacks(DecisionSigned signed, DateOnly day, bool isLatest)
    {
        Decision decision = signed.Decision;
        if (!isLatest || decision.PlanVersionId != Plan!.Id)
        {
            return PermitReasonCode.DecisionOutOfPlace;
        }

        if (!IsLastDueExamined(day, signed.Order))
        {
            return PermitReasonCode.DecisionWithoutExamination;
        }

        if (decision.Kind == DecisionKind.Hold)
        {
            return null;
        }

        if (decision.Place is not { } place || !IsIn(Plan, place) || (decision.Kind == DecisionKind.StepBack && place > Place))
        {
            return PermitReasonCode.DecisionOutOfPlace;
        }

        int gates = PlanRows.StretchOf(Plan, place.Step) - PlanRows.StretchOf(Plan, Place.Step);
        // The interval of a step brings no gate forward: only its own day and the date that a vet named do.
        return gates > (_namedDue <= day ? 1 : 0) ? PermitReasonCode.DecisionBeforeGate : null;
    }

    /// <summary>Whether the last due date that has come by a day, if any, was followed by an examination of every open case.</summary>
    private bool IsLastDueExamined(DateOnly day, long before) =>
        (
            _namedDue <= day ? _namedDue
            : _intervalEnd <= day ? _intervalEnd
            : null
        )
            is not { } due
        || IsExamined(due, day, before);

    private void PlaceIn(PlanVersion plan, PlanPlace place, DateOnly day)
    {
        (Plan, Place, SignedOn, _placedIn) = (plan, place, day, place.Step);
        Placings++;
    }

    /// <summary>
    /// The day on which the first interval of the steps up to the next gate ends, counted from when the cases were last examined; for a
    /// step that comes later not before its first day, for the first not before the signature. No lost day moves it.
    /// </summary>
    private DateOnly? IntervalEndFrom(DateOnly day, long before)
    {
        DateOnly since = _cases.WaitingSince(day, before);
        return Enumerable
            .Range(Place.Step, PlanRows.LastOfStretch(Plan!, Place.Step) + 1 - Place.Step)
            .Where(step => Plan!.Steps[step].RecheckIntervalDays is not null)
            .Select(step =>
                (DateOnly?)Later(
                    day.AddDays(PlanRows.DaysToStep(Plan!, Place, step)),
                    since.AddDays(Plan!.Steps[step].RecheckIntervalDays!.Value)
                )
            )
            .Min();
    }

    private void Lower(Decision decision, DateOnly? validUntil)
    {
        Limits = Lowest(Limits, decision.Limits);
        ValidUntil = Earliest(ValidUntil, validUntil);
        if (decision.RecheckDate < _namedDue || (_namedDue is null && decision.RecheckDate is not null))
        {
            (_namedDue, _isGate) = (decision.RecheckDate, false);
        }

        if (decision.Floor is { } floor)
        {
            Floor = Floor is null ? null : Work.Least(Floor, floor);
        }
    }

    private void SetDue(DateOnly? recheck, DateOnly? gate) =>
        (_namedDue, _isGate) = gate is not null && !(recheck < gate) ? (gate, true) : (recheck, false);

    private void Clear()
    {
        _notes.Clear();
        (_stoppedOn, _heldOn, _pause, Cap, Ended, HasProblems) = (null, null, null, null, null, false);
    }

    private static bool IsIn(PlanVersion plan, PlanPlace place) => place.Step >= 0 && place.Step < plan.Steps.Count && place.Days >= 0;

    private static OutingLimits? Lowest(OutingLimits? one, OutingLimits? other) =>
        one is null ? other
        : other is null ? one
        : new(
            Lowest(one.Walk, other.Walk),
            Lowest(one.Trot, other.Trot),
            Lowest(one.Canter, other.Canter),
            Lowest(one.Gallop, other.Gallop)
        );

    private static int? Lowest(int? one, int? other) => one is null || other < one ? other : one;
}
