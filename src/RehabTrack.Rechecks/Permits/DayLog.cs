using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>One entry of exercise as done on a day, with signs. A day may have several; their minutes add up.</summary>
public sealed record DayLog
{
    /// <summary>The practice's calendar date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Minutes done by gait, all outings of the entry together. 0 in all is a day in the box.</summary>
    public OutingMinutes Done { get; init; }

    /// <summary>Outings of the entry; null when not said.</summary>
    public int? Outings { get; init; }

    /// <summary>How the horse was worked; empty when not said.</summary>
    public WorkModes Modes { get; init; }

    /// <summary>Circles ridden; null when not said.</summary>
    public Circles? Circles { get; init; }

    /// <summary>Over which ground; empty when not said.</summary>
    public Surfaces Surfaces { get; init; }

    /// <summary>How the horse stood; null when not said.</summary>
    public Turnout? Turnout { get; init; }

    /// <summary>Heat.</summary>
    public SignGrade Heat { get; init; }

    /// <summary>Swelling.</summary>
    public SignGrade Swelling { get; init; }

    /// <summary>Pain on touch.</summary>
    public SignGrade Pain { get; init; }

    /// <summary>Lameness seen; null when not watched for.</summary>
    public bool? Lameness { get; init; }

    /// <summary>Whether a sign is above none. That is a concern.</summary>
    public bool HasSign => Heat > SignGrade.None || Swelling > SignGrade.None || Pain > SignGrade.None || Lameness == true;
}
