using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Rechecks.Care;

/// <summary>A treatment, medicine or sign. It changes no verdict and permits nothing.</summary>
public sealed record CareEntry
{
    /// <summary>What it is.</summary>
    public required CareKind Kind { get; init; }

    /// <summary>The day, or the first of its days.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day; null for one day, and for a medicine that is still given.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>The case it belongs to; null for the whole horse.</summary>
    public string? CaseId { get; init; }

    /// <summary>How clear a sign is; not checked where that is not asked.</summary>
    public SignGrade Grade { get; init; }

    /// <summary>How lame, AAEP scale 0 to 5; null when not graded.</summary>
    public int? LamenessAaep { get; init; }

    /// <summary>How lameness was looked for.</summary>
    public string? Context { get; init; }

    /// <summary>Whatever else.</summary>
    public string? Words { get; init; }

    /// <summary>The vet's own stand-down date; nothing is computed from it.</summary>
    public DateOnly? StandDownUntil { get; init; }

    /// <summary>Whether it holds on a day: a medicine without an end is still given, anything else without one is of its day.</summary>
    /// <param name="day">The day.</param>
    public bool HoldsOn(DateOnly day) =>
        From <= day && (Until is { } until ? day <= until : CareRules.GroupOf(Kind) == CareGroup.Medicine || day == From);
}
