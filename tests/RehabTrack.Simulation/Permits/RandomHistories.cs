using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Simulation.Permits;

/// <summary>Makes up what may happen to a horse within some months: visits, plans, logs, concerns, pauses, and entries that come late.</summary>
public sealed class RandomHistories(Random random)
{
    /// <summary>The last day on which something happens.</summary>
    public const int LastDay = 110;

    private static readonly string[] Cases = ["left hind", "right fore"];

    private readonly List<(int Recorded, PermitEntry Entry)> _entries = [];
    private PlanVersion[] _plans = [];

    public PermitHistory Next()
    {
        _entries.Clear();
        _plans = [.. Enumerable.Range(1, random.Next(1, 4)).Select(Plan)];
        Opens(Cases[0], 0);
        if (Chance(0.3))
        {
            Opens(Cases[1], Day());
        }

        Signs(_plans[0], Chance(0.9) ? 0 : Day(), Chance(0.95));
        foreach (PlanVersion later in _plans.Skip(1))
        {
            Visit(Day(), day => Signs(later, day, Chance(0.6)));
        }

        int visits = random.Next(0, 6);
        for (int visit = 0; visit < visits; visit++)
        {
            Visit(Day(), Decides);
        }

        Logs();
        int others = random.Next(0, 6);
        for (int other = 0; other < others; other++)
        {
            Add(Common());
        }

        if (Chance(0.1))
        {
            int day = Day();
            string id = Pick(Cases);
            Add(
                new CaseClosed
                {
                    Order = 0,
                    RecordedOn = Recorded(day),
                    CaseId = id,
                    Date = Story.Day(day),
                }
            );
        }

        // What is recorded on one day comes in the order in which it was made up, or not.
        Enrich(new Random(random.Next()));
        PermitEntry[] ordered = [.. _entries.OrderBy(entry => entry.Recorded).Select(entry => entry.Entry)];
        return new([.. ordered.Select((entry, index) => entry with { Order = 10 * (index + 1) })]);
    }

    /// <summary>
    /// An entry without a signature: a concern, a sign in a log, a hold, a pause, a lowering, an import, a log that comes too late, a
    /// case put away. No such entry may raise anything on any day that no later signature has a say in.
    /// </summary>
    public PermitEntry Unsigned() =>
        Chance(0.15) ? Closing(random)
        : Common() is var entry && entry is DayLogged logged && Chance(0.7) ? Worked(logged, random)
        : entry;

    /// <summary>
    /// Adds to what was made up: minutes done, who signed, intervals of the steps, a case put away. It has its own chances, so that a seed
    /// keeps the history it had before these were thought of.
    /// </summary>
    private void Enrich(Random chances)
    {
        bool hasMinutes = chances.NextDouble() < 0.7;
        bool hasIntervals = chances.NextDouble() < 0.4;
        Dictionary<string, PlanVersion> plans = _plans.ToDictionary(
            plan => plan.Id,
            plan =>
                plan with
                {
                    Steps =
                    [
                        .. plan.Steps.Select(step =>
                            hasIntervals && chances.NextDouble() < 0.5 ? step with { RecheckIntervalDays = chances.Next(1, 70) } : step
                        ),
                    ],
                }
        );
        _plans = [.. _plans.Select(plan => plans[plan.Id])];
        for (int index = 0; index < _entries.Count; index++)
        {
            (int recorded, PermitEntry entry) = _entries[index];
            string vet = chances.NextDouble() < 0.5 ? "first" : "second";
            _entries[index] = (
                recorded,
                entry switch
                {
                    PlanSigned signed => signed with { Plan = plans[signed.Plan.Id], SignedBy = vet },
                    DecisionSigned signed => signed with { Decision = signed.Decision with { SignedBy = vet } },
                    DayLogged logged when hasMinutes && chances.NextDouble() < 0.8 => Worked(logged, chances),
                    _ => entry,
                }
            );
        }

        if (chances.NextDouble() < 0.15)
        {
            Add(Closing(chances));
        }
    }

    private static DayLogged Worked(DayLogged logged, Random chances) =>
        logged with
        {
            Log = logged.Log with { Done = new OutingMinutes(chances.Next(1, 40), chances.Next(0, 2) * chances.Next(0, 20)) },
        };

    private static CaseClosed Closing(Random chances)
    {
        int day = chances.Next(0, LastDay);
        return new CaseClosed
        {
            Order = 0,
            RecordedOn = Story.Day(day + (chances.Next(5) == 0 ? chances.Next(1, 25) : 0)),
            CaseId = Cases[chances.Next(Cases.Length)],
            Date = Story.Day(day),
        };
    }

    private PermitEntry Common()
    {
        int day = Day();
        DateOnly recorded = Recorded(day);
        DateOnly date = Story.Day(day);
        bool isImported = Chance(0.1);
        return random.Next(9) switch
        {
            0 => new ConcernOpened
            {
                Order = 0,
                RecordedOn = recorded,
                IsImported = isImported,
                Date = date,
            },
            1 => new DayLogged
            {
                Order = 0,
                RecordedOn = recorded,
                IsImported = isImported,
                Log = new DayLog { Date = date, Swelling = SignGrade.Slight },
            },
            2 or 3 => new HoldPlaced
            {
                Order = 0,
                RecordedOn = recorded,
                IsImported = isImported,
                Kind = Pick(Enum.GetValues<PermitHoldKind>()),
                From = date,
                Until = Until(day),
            },
            4 => new WorkPaused
            {
                Order = 0,
                RecordedOn = recorded,
                IsImported = isImported,
                From = date,
                Until = Until(day),
            },
            5 or 6 => new WorkLowered
            {
                Order = 0,
                RecordedOn = recorded,
                IsImported = isImported,
                AtMost = Work(),
                From = date,
                Until = Until(day),
            },
            7 => new DayLogged
            {
                Order = 0,
                RecordedOn = date.AddDays(random.Next(2, 30)),
                Log = new DayLog { Date = date, Heat = SignGrade.None },
            },
            _ => Imported(day),
        };
    }

    private PermitEntry Imported(int day) =>
        random.Next(4) switch
        {
            0 => new PlanSigned
            {
                Order = 0,
                RecordedOn = Recorded(day),
                IsImported = true,
                Plan = Pick(_plans),
                From = Story.Day(day),
                Place = Place(),
                IsAdvance = true,
            },
            1 => new ExaminationSigned
            {
                Order = 0,
                RecordedOn = Recorded(day),
                IsImported = true,
                CaseId = Pick(Cases),
                Date = Story.Day(day),
            },
            2 => new DayLogged
            {
                Order = 0,
                RecordedOn = Story.Day(day),
                IsImported = true,
                Log = new DayLog { Date = Story.Day(day) },
            },
            _ => new DecisionSigned
            {
                Order = 0,
                RecordedOn = Recorded(day),
                IsImported = true,
                Decision = Decision(day),
            },
        };

    private void Opens(string id, int day) =>
        Add(
            new CaseOpened
            {
                Order = 0,
                RecordedOn = Story.Day(day),
                CaseId = id,
                Date = Story.Day(Math.Max(0, day - random.Next(0, 3))),
            }
        );

    private void Visit(int day, Action<int> sign)
    {
        foreach (string id in Cases)
        {
            if (Chance(0.75))
            {
                Add(
                    new ExaminationSigned
                    {
                        Order = 0,
                        RecordedOn = Story.Day(day),
                        IsImported = Chance(0.1),
                        CaseId = id,
                        Date = Story.Day(day - (Chance(0.2) ? random.Next(0, 10) : 0)),
                    }
                );
            }
        }

        sign(day);
    }

    private void Signs(PlanVersion plan, int day, bool isAdvance) =>
        Add(
            new PlanSigned
            {
                Order = 0,
                RecordedOn = Recorded(day),
                Plan = plan,
                From = Story.Day(day),
                Place = Chance(0.6) ? PlanPlace.Start : Place(),
                IsAdvance = isAdvance,
                RecheckDate = Chance(0.3) ? Story.Day(day + random.Next(1, 60)) : null,
            }
        );

    private void Decides(int day) =>
        Add(
            new DecisionSigned
            {
                Order = 0,
                RecordedOn = Recorded(day),
                Decision = Decision(day),
            }
        );

    private Decision Decision(int day) =>
        new()
        {
            Kind = Pick<DecisionKind>([
                DecisionKind.Advance,
                DecisionKind.Advance,
                DecisionKind.Advance,
                DecisionKind.Hold,
                DecisionKind.Hold,
                DecisionKind.StepBack,
                DecisionKind.StepBack,
                DecisionKind.Stop,
                DecisionKind.Pause,
                Chance(0.3) ? DecisionKind.Close : DecisionKind.Pause,
            ]),
            PlanVersionId = Chance(0.9) ? _plans[Math.Min(_plans.Length - 1, day * _plans.Length / LastDay)].Id : Pick(_plans).Id,
            From = Story.Day(day),
            Place = Chance(0.95) ? Place() : null,
            Limits = Chance(0.2)
                ? new OutingLimits(Chance(0.5) ? random.Next(0, 40) : null, Chance(0.5) ? random.Next(0, 20) : null)
                : null,
            ValidUntil = Chance(0.25) ? Story.Day(day + random.Next(-2, 40)) : null,
            RecheckDate = Chance(0.4) ? Story.Day(day + random.Next(-2, 60)) : null,
            Floor = Chance(0.2) ? Work() : null,
        };

    /// <summary>Runs of days with a log each, and gaps.</summary>
    private void Logs()
    {
        int day = Chance(0.8) ? 0 : random.Next(0, 20);
        while (day < LastDay)
        {
            int last = day + (Chance(0.5) ? LastDay : random.Next(1, 60));
            for (; day <= Math.Min(last, LastDay); day += random.Next(1, 4))
            {
                Add(
                    new DayLogged
                    {
                        Order = 0,
                        RecordedOn = Story.Day(day + (Chance(0.1) ? 1 : 0)),
                        Log = new DayLog { Date = Story.Day(day) },
                    }
                );
            }

            day += random.Next(1, 25);
        }
    }

    private PlanVersion Plan(int number)
    {
        int steps = random.Next(1, 5);
        return new PlanVersion
        {
            Id = $"plan {number}",
            Number = number,
            Steps = [.. Enumerable.Range(0, steps).Select(step => Step(step == steps - 1))],
            Caps = Chance(0.25)
                ? new PlanCaps(
                    Chance(0.5) ? random.Next(0, 60) : null,
                    Chance(0.5) ? random.Next(0, 90) : null,
                    Chance(0.5) ? random.Next(0, 400) : null
                )
                : PlanCaps.None,
            Floor = Chance(0.5) ? Work() with { Outing = new OutingMinutes(random.Next(0, 2) * 10) } : null,
        };
    }

    private PlanStep Step(bool isLast) =>
        new()
        {
            Name = "step",
            ShortestDays = random.Next(1, 40),
            Walk = Rule(40),
            Trot = Rule(20),
            Canter = Chance(0.6) ? new GaitRule(0) : Rule(10),
            Gallop = new GaitRule(Chance(0.9) ? 0 : random.Next(0, 5)),
            OutingsADay = Chance(0.05) ? null : random.Next(1, 3),
            DaysAWeek = Chance(0.05) ? null : random.Next(Chance(0.1) ? 0 : 3, 8),
            Modes = (WorkModes)random.Next(Chance(0.1) ? 0 : 1, 8),
            Circles = Chance(0.2) ? null : Pick(Enum.GetValues<Circles>()),
            Surfaces = (Surfaces)(random.Next(Chance(0.1) ? 0 : 1, 16) | (Chance(0.7) ? 1 : 0)),
            Turnout = Chance(0.2) ? null : Pick(Enum.GetValues<Turnout>()),
            Gate = !isLast && Chance(0.5) ? new Gate("", []) : null,
        };

    private GaitRule? Rule(int most)
    {
        int start = random.Next(0, most);
        return Chance(0.05) ? null
            : Chance(0.5) ? new GaitRule(start)
            : new GaitRule(start, random.Next(1, 8), start + random.Next(0, most));
    }

    private Work Work() =>
        new Work
        {
            Outing = new OutingMinutes(random.Next(0, 40), Chance(0.5) ? 0 : random.Next(0, 20)),
            OutingsADay = random.Next(0, 3),
            DaysAWeek = random.Next(0, 8),
            Modes = (WorkModes)random.Next(0, 8),
            Circles = Pick(Enum.GetValues<Circles>()),
            Surfaces = (Surfaces)random.Next(0, 16),
            Turnout = Pick(Enum.GetValues<Turnout>()),
        }.Settled();

    private PlanPlace Place() => new(random.Next(Chance(0.03) ? -1 : 0, 4), Chance(0.6) ? 0 : random.Next(Chance(0.03) ? -1 : 0, 30));

    /// <summary>A day; now and then one on which something happened already.</summary>
    private int Day() =>
        _entries.Count > 0 && Chance(0.15)
            ? Math.Max(0, _entries[random.Next(_entries.Count)].Recorded - Story.Day0.DayNumber)
            : random.Next(0, LastDay);

    private DateOnly? Until(int day) => Chance(0.75) ? Story.Day(day + random.Next(-1, 25)) : null;

    /// <summary>Mostly the day itself; some entries come late, some are made ahead.</summary>
    private DateOnly Recorded(int day) =>
        random.Next(10) switch
        {
            0 => Story.Day(day + random.Next(1, 25)),
            1 => Story.Day(Math.Max(0, day - random.Next(1, 10))),
            _ => Story.Day(day),
        };

    private void Add(PermitEntry entry) => _entries.Add((entry.RecordedOn.DayNumber, entry));

    private bool Chance(double probability) => random.NextDouble() < probability;

    private T Pick<T>(IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];
}
