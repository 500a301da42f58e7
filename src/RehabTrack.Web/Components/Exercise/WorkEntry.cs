using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>Work as it is typed: minutes by gait, how often, how and where.</summary>
public sealed class WorkEntry
{
    private readonly Dictionary<Gait, string?> _minutes = [];

    /// <summary>Outings a day.</summary>
    public string? Outings { get; set; }

    /// <summary>Days a week.</summary>
    public string? Days { get; set; }

    /// <summary>How.</summary>
    public WorkModes Modes { get; set; }

    /// <summary>Whether in circles.</summary>
    public Circles Circles { get; set; }

    /// <summary>Over which ground.</summary>
    public Surfaces Surfaces { get; set; }

    /// <summary>How free the horse may stand.</summary>
    public Turnout Turnout { get; set; }

    /// <summary>Minutes of a gait.</summary>
    public string? this[Gait gait]
    {
        get => _minutes.GetValueOrDefault(gait);
        set => _minutes[gait] = value;
    }

    /// <summary>Work as fields show it.</summary>
    public static WorkEntry Of(Work work)
    {
        ArgumentNullException.ThrowIfNull(work);
        WorkEntry entry = new()
        {
            Outings = EntryNumbers.Text(work.OutingsADay),
            Days = EntryNumbers.Text(work.DaysAWeek),
            Modes = work.Modes,
            Circles = work.Circles,
            Surfaces = work.Surfaces,
            Turnout = work.Turnout,
        };
        foreach (Gait gait in PlanRows.Gaits.Where(gait => work.Outing.Of(gait) > 0))
        {
            entry[gait] = EntryNumbers.Text(work.Outing.Of(gait));
        }

        return entry;
    }

    /// <summary>The work; what is blank counts as none.</summary>
    /// <param name="numbers">Takes what cannot be read.</param>
    /// <param name="field">The field, as problems name it.</param>
    public Work Read(EntryNumbers numbers, string field)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        int Minutes(Gait gait) => numbers.Read(field, this[gait]) ?? 0;
        return new Work
        {
            Outing = new(Minutes(Gait.Walk), Minutes(Gait.Trot), Minutes(Gait.Canter), Minutes(Gait.Gallop)),
            OutingsADay = numbers.Read(field, Outings) ?? 0,
            DaysAWeek = numbers.Read(field, Days) ?? 0,
            Modes = Modes,
            Circles = Circles,
            Surfaces = Surfaces,
            Turnout = Turnout,
        };
    }
}
