using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>What was done in a week, Monday to Sunday, against what was permitted on its days.</summary>
public sealed record WeekAdherence
{
    /// <summary>The first day of the week that was asked about.</summary>
    public required DateOnly From { get; init; }

    /// <summary>How it stands: over when a day was, or when there were more days with an outing than permitted.</summary>
    public required AdherenceStanding Standing { get; init; }

    /// <summary>Its days, those asked about.</summary>
    public required IReadOnlyList<DayAdherence> Days { get; init; }

    /// <summary>Minutes done by gait.</summary>
    public required OutingMinutes Done { get; init; }

    /// <summary>Minutes permitted, all gaits together: of the days with most, as many as the days a week that were permitted.</summary>
    public required int PermittedMinutes { get; init; }

    /// <summary>Days on which something was done.</summary>
    public required int DaysWorked { get; init; }

    /// <summary>In which respects more was done than permitted, on a day or in the week.</summary>
    public required IReadOnlyList<OverKind> Over { get; init; }
}
