namespace RehabTrack.Rechecks.Permits;

/// <summary>One reason why a permit is as it is, as a code with typed arguments; the sentence is made in Wording.</summary>
/// <param name="Code">What it is.</param>
public sealed record PermitReason(PermitReasonCode Code)
{
    /// <summary>Since when, or of which day.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Until when, the last day; or, when growth has stopped for a recheck, the last day before the floor.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>A number of days.</summary>
    public int? Days { get; init; }

    /// <summary>The name of a step.</summary>
    public string? Step { get; init; }

    /// <summary>The week of effective time in the step, from 1 as people count.</summary>
    public int? Week { get; init; }

    /// <summary>Days, or minutes, that were done this week.</summary>
    public int? Done { get; init; }

    /// <summary>Days, or minutes, that a week permits.</summary>
    public int? Most { get; init; }
}
