using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Simulation.Permits;

/// <summary>Writes down what happens to one horse, day by day, in the order in which it is told.</summary>
public sealed class Story(PlanVersion plan)
{
    public const string FirstCase = "left hind";
    public static readonly DateOnly Day0 = new(2026, 1, 5);

    private readonly List<PermitEntry> _entries = [];
    private PlanVersion _plan = plan;
    private long _order;

    public PermitHistory History => new([.. _entries]);

    public static DateOnly Day(int day) => Day0.AddDays(day);

    /// <summary>A story in which the first case is open and the plan is signed on day 0.</summary>
    public static Story Of(PlanVersion plan, PlanPlace place = default, DateOnly? recheck = null) =>
        new Story(plan).Opens(0).Signs(plan, 0, place, recheck: recheck);

    public Story Opens(int day, string id = FirstCase, int? recorded = null) =>
        Add(
            new CaseOpened
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                CaseId = id,
                Date = Day(day),
            }
        );

    public Story Closes(int day, string id = FirstCase, int? recorded = null) =>
        Add(
            new CaseClosed
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                CaseId = id,
                Date = Day(day),
            }
        );

    public Story Signs(
        PlanVersion next,
        int day,
        PlanPlace place = default,
        bool isAdvance = true,
        DateOnly? recheck = null,
        int? recorded = null,
        bool isImported = false
    )
    {
        _plan = next;
        return Add(
            new PlanSigned
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                IsImported = isImported,
                Plan = next,
                From = Day(day),
                Place = place,
                IsAdvance = isAdvance,
                RecheckDate = recheck,
            }
        );
    }

    public Story Decides(
        DecisionKind kind,
        int day,
        PlanPlace? place = null,
        int? recorded = null,
        int? validUntil = null,
        int? recheck = null,
        OutingLimits? limits = null,
        Work? floor = null,
        string? plan = null,
        bool isImported = false
    ) =>
        Add(
            new DecisionSigned
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                IsImported = isImported,
                Decision = new Decision
                {
                    Kind = kind,
                    PlanVersionId = plan ?? _plan.Id,
                    From = Day(day),
                    Place = place,
                    Limits = limits,
                    ValidUntil = validUntil is { } until ? Day(until) : null,
                    RecheckDate = recheck is { } seen ? Day(seen) : null,
                    Floor = floor,
                },
            }
        );

    public Story Examines(int day, string id = FirstCase, int? recorded = null, bool isImported = false) =>
        Add(
            new ExaminationSigned
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                IsImported = isImported,
                CaseId = id,
                Date = Day(day),
            }
        );

    public Story Logs(int day, int? recorded = null, SignGrade heat = SignGrade.None, bool isImported = false) =>
        Add(
            new DayLogged
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                IsImported = isImported,
                Log = new DayLog { Date = Day(day), Heat = heat },
            }
        );

    /// <summary>A log of work done in hand, or in another way, over firm ground.</summary>
    public Story Does(int day, OutingMinutes done, WorkModes modes = WorkModes.InHand, int? recorded = null) =>
        Add(
            new DayLogged
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                Log = new DayLog
                {
                    Date = Day(day),
                    Done = done,
                    Modes = modes,
                    Surfaces = Surfaces.FirmEven,
                },
            }
        );

    /// <summary>A log on each day from one to another, both included, entered on the day.</summary>
    public Story LogsEach(int from, int to)
    {
        for (int day = from; day <= to; day++)
        {
            Logs(day);
        }

        return this;
    }

    public Story Worries(int day, int? recorded = null) =>
        Add(
            new ConcernOpened
            {
                Order = _order,
                RecordedOn = Day(recorded ?? day),
                Date = Day(day),
            }
        );

    public Story Lowers(Work atMost, int from, int? until = null, int? recorded = null) =>
        Add(
            new WorkLowered
            {
                Order = _order,
                RecordedOn = Day(recorded ?? from),
                AtMost = atMost,
                From = Day(from),
                Until = until is { } last ? Day(last) : null,
            }
        );

    public Story Pauses(int from, int? until = null, int? recorded = null) =>
        Add(
            new WorkPaused
            {
                Order = _order,
                RecordedOn = Day(recorded ?? from),
                From = Day(from),
                Until = until is { } last ? Day(last) : null,
            }
        );

    public Story Holds(PermitHoldKind kind, int from, int? until = null, int? recorded = null) =>
        Add(
            new HoldPlaced
            {
                Order = _order,
                RecordedOn = Day(recorded ?? from),
                Kind = kind,
                From = Day(from),
                Until = until is { } last ? Day(last) : null,
            }
        );

    public Story Ends(PermitHoldKind kind, int from, int? recorded = null) =>
        Add(
            new HoldEnded
            {
                Order = _order,
                RecordedOn = Day(recorded ?? from),
                Kind = kind,
                From = Day(from),
            }
        );

    public Permit On(int day) => PermitReader.For(History, Day(day));

    private Story Add(PermitEntry entry)
    {
        _order++;
        _entries.Add(entry);
        return this;
    }
}
