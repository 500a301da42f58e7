using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>What was done on a day against what was permitted then.</summary>
public sealed record DayAdherence
{
    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>How it stands.</summary>
    public required AdherenceStanding Standing { get; init; }

    /// <summary>Minutes done by gait, all logs of the day together.</summary>
    public required OutingMinutes Done { get; init; }

    /// <summary>Minutes permitted by gait, all outings of the day together; null when no permit is known.</summary>
    public required OutingMinutes? Permitted { get; init; }

    /// <summary>Minutes done beyond the permitted, gait by gait, at least 0.</summary>
    public required OutingMinutes Beyond { get; init; }

    /// <summary>In which respects more was done than permitted.</summary>
    public required IReadOnlyList<OverKind> Over { get; init; }
}
