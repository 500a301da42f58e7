using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Permits;

namespace RehabTrack.Rechecks.Watch;

/// <summary>
/// What stands and needs a person: a code with its severity, since when, and its figures; the sentence is made in Wording. It stands
/// until its ground is gone. Acknowledging it puts it out of sight and changes nothing else.
/// </summary>
public sealed record StandingFinding
{
    /// <summary>What it is.</summary>
    public required StandingKind Kind { get; init; }

    /// <summary>How much it asks.</summary>
    public required FindingSeverity Severity { get; init; }

    /// <summary>Since when it stands, or the day that it speaks of.</summary>
    public required DateOnly Since { get; init; }

    /// <summary>What to do next.</summary>
    public required StandingStep Next { get; init; }

    /// <summary>The case it speaks of; null when it speaks of the horse.</summary>
    public string? CaseId { get; init; }

    /// <summary>What the analysis said; only with <see cref="StandingKind.OfCase"/>.</summary>
    public Finding? OfCase { get; init; }

    /// <summary>A number of days: since the last log, past the due date, or with too much work.</summary>
    public int? Days { get; init; }

    /// <summary>Minutes done beyond what was permitted, all those days together.</summary>
    public int? Minutes { get; init; }

    /// <summary>How many concerns are open.</summary>
    public int? Count { get; init; }

    /// <summary>The last day before the permit drops to the floor, or the last day that was too much.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>In which respects too much was done.</summary>
    public IReadOnlyList<OverKind> Over { get; init; } = [];

    /// <summary>The name of the plan's step in which the horse stands; null without a plan.</summary>
    public string? Step { get; init; }

    /// <summary>The week of effective time in that step, from 1 as people count.</summary>
    public int? Week { get; init; }

    /// <summary>
    /// How bad it is, in the unit of its kind: % of change for a case, minutes too much, concerns open, whole waiting times past. An
    /// acknowledgement of less does not cover it.
    /// </summary>
    public int Weight { get; init; }

    /// <summary>What it speaks of, and since when: the same again is the same key, a new occurrence is another.</summary>
    public string Key =>
        string.Join(
            '|',
            Kind,
            CaseId,
            OfCase?.Kind,
            OfCase?.ExaminationId,
            OfCase?.Part,
            OfCase?.Level,
            OfCase?.Lesion,
            OfCase?.TrackId,
            Since.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)
        );

    /// <summary>Whether somebody has acknowledged it as it is: the same occurrence, no more severe and no worse than it was then.</summary>
    /// <param name="acknowledged">What was acknowledged.</param>
    public bool IsCoveredBy(Acknowledged acknowledged)
    {
        ArgumentNullException.ThrowIfNull(acknowledged);
        return string.Equals(acknowledged.Key, Key, StringComparison.Ordinal)
            && Severity <= acknowledged.Severity
            && Weight <= acknowledged.Weight;
    }
}
