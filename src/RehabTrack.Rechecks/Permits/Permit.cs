using RehabTrack.Rechecks.Exercise;

namespace RehabTrack.Rechecks.Permits;

/// <summary>What is allowed on one date, and why. <see cref="Work.None"/> is "no work is signed", never a template and never full work.</summary>
public sealed record Permit
{
    /// <summary>The date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>How it stands.</summary>
    public required PermitState State { get; init; }

    /// <summary>What is allowed.</summary>
    public required Work Work { get; init; }

    /// <summary>What would be allowed had nothing been done yet this week, Monday to Sunday: never less than <see cref="Work"/>.</summary>
    public required Work BeforeWeek { get; init; }

    /// <summary>What would be allowed if nothing dropped, paused or stopped it: the signed row with caps, ceilings and lowerings.</summary>
    public required Work SignedWork { get; init; }

    /// <summary>Which signed row; null when nothing is signed.</summary>
    public PermitSource? Source { get; init; }

    /// <summary>All reasons, the one that decides first. Never empty.</summary>
    public required IReadOnlyList<PermitReason> Reasons { get; init; }

    /// <summary>The day on which growth stops for a recheck; null when none is signed for.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>Whether the due date is a gate's: a step up waits behind it.</summary>
    public bool IsGateDue { get; init; }

    /// <summary>The last day before a missed recheck drops the work to the floor; null without a due date.</summary>
    public DateOnly? GraceEnds { get; init; }

    /// <summary>
    /// The last day on which a print of this permit shows no more than is allowed, if nothing else happens. Never before the date.
    /// </summary>
    public required DateOnly VoidAfter { get; init; }
}
