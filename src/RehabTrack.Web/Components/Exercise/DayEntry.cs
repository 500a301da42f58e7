using System.Globalization;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>A day's log as it is typed.</summary>
public sealed class DayEntry
{
    private readonly Dictionary<Gait, string?> _minutes = [];

    /// <summary>The day.</summary>
    public string? Date { get; set; }

    /// <summary>Outings of the day; blank when not said.</summary>
    public string? Outings { get; set; }

    /// <summary>Circles ridden; null when not said.</summary>
    public Circles? Circles { get; set; }

    /// <summary>How the horse was worked.</summary>
    public WorkModes Modes { get; set; }

    /// <summary>Over which ground.</summary>
    public Surfaces Surfaces { get; set; }

    /// <summary>How the horse stood; null when not said.</summary>
    public Turnout? Turnout { get; set; }

    /// <summary>Heat.</summary>
    public SignGrade Heat { get; set; }

    /// <summary>Swelling.</summary>
    public SignGrade Swelling { get; set; }

    /// <summary>Pain on touch.</summary>
    public SignGrade Pain { get; set; }

    /// <summary>Lameness; null when not watched for.</summary>
    public bool? Lameness { get; set; }

    /// <summary>Who rode or led.</summary>
    public string? Handler { get; set; }

    /// <summary>Whatever happened.</summary>
    public string? Words { get; set; }

    /// <summary>Cold, bandage, medicines.</summary>
    public string? Care { get; set; }

    /// <summary>Minutes of a gait.</summary>
    public string? this[Gait gait]
    {
        get => _minutes.GetValueOrDefault(gait);
        set => _minutes[gait] = value;
    }

    /// <summary>
    /// A day on which what is permitted was done. Way, circles, ground and turnout are filled in where the permit leaves one choice:
    /// where it leaves several, nobody but the person knows. Signs are never filled in.
    /// </summary>
    /// <param name="permit">The permit of that day.</param>
    public static DayEntry Of(Permit permit)
    {
        ArgumentNullException.ThrowIfNull(permit);
        Work work = permit.Work;
        DayEntry entry = new()
        {
            Date = DayText.Of(permit.Date),
            Turnout = work.Turnout == Rechecks.Exercise.Turnout.None ? work.Turnout : null,
        };
        if (work.HasOuting)
        {
            entry.Outings = EntryNumbers.Text(work.OutingsADay);
            entry.Circles = work.Circles == Rechecks.Exercise.Circles.None ? work.Circles : null;
            entry.Modes = PlanWords.Modes.Contains(work.Modes) ? work.Modes : WorkModes.None;
            entry.Surfaces = PlanWords.Grounds.Contains(work.Surfaces) ? work.Surfaces : Surfaces.None;
        }

        foreach (Gait gait in PlanRows.Gaits.Where(gait => work.Day.Of(gait) > 0))
        {
            entry[gait] = EntryNumbers.Text(work.Day.Of(gait));
        }

        return entry;
    }

    /// <summary>The log; null when something typed cannot be read.</summary>
    /// <param name="problems">Takes what cannot be read.</param>
    public DayLog? Read(FormProblems problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        List<Problem> unread = [];
        int? Number(string field, string? typed, string code)
        {
            string text = typed?.Trim() ?? "";
            if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int number))
            {
                return number;
            }

            if (text.Length > 0)
            {
                unread.Add(new Problem(field, code, text));
            }

            return null;
        }

        int Minutes(Gait gait) => Number(LogFields.Of(gait), this[gait], "minutes-unreadable") ?? 0;

        DateOnly? date = DayText.Read(Date);
        if (date is null)
        {
            unread.Add(new Problem(LogFields.Date, "day-missing"));
        }

        OutingMinutes done = new(Minutes(Gait.Walk), Minutes(Gait.Trot), Minutes(Gait.Canter), Minutes(Gait.Gallop));
        int? outings = Number(LogFields.Outings, Outings, "outings-unreadable");
        problems.Take(unread);
        return unread.Count > 0
            ? null
            : new DayLog
            {
                Date = date!.Value,
                Done = done,
                Outings = outings,
                Circles = Circles,
                Modes = Modes,
                Surfaces = Surfaces,
                Turnout = Turnout,
                Heat = Heat,
                Swelling = Swelling,
                Pain = Pain,
                Lameness = Lameness,
            };
    }

    /// <summary>What stands beside the log in words.</summary>
    public LogWords ReadWords() =>
        new()
        {
            Words = Words,
            Handler = Handler,
            Care = Care,
        };
}
