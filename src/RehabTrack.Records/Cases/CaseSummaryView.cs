using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Schedule;

namespace RehabTrack.Records.Cases;

/// <summary>What the analysis said of a case when it was last written.</summary>
public sealed record CaseSummaryView
{
    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why.</summary>
    public required VerdictReason Reason { get; init; }

    /// <summary>The measure that speaks; null when none does.</summary>
    public required Measure? Measure { get; init; }

    /// <summary>Change in % per 60 days over the window that decides; null when there is no rate.</summary>
    public required double? RatePercentPer60Days { get; init; }

    /// <summary>Lower end of its 95 % interval.</summary>
    public required double? Lower95Percent { get; init; }

    /// <summary>Upper end of its 95 % interval.</summary>
    public required double? Upper95Percent { get; init; }

    /// <summary>Examinations that count: signed, outside and history.</summary>
    public required int ExaminationCount { get; init; }

    /// <summary>Date of the first of them.</summary>
    public required DateOnly? FirstExamination { get; init; }

    /// <summary>Date of the last of them.</summary>
    public required DateOnly? LastExamination { get; init; }

    /// <summary>Date of the last one signed here.</summary>
    public required DateOnly? LastSigned { get; init; }

    /// <summary>When the recheck is due: by the interval after the last signed examination, or earlier by what was signed; null without either.</summary>
    public required DateOnly? DueOn { get; init; }

    /// <summary>What set that date.</summary>
    public required DueBy DueBy { get; init; }

    /// <summary>Severity of the worst finding; null without findings.</summary>
    public required FindingSeverity? WorstSeverity { get; init; }

    /// <summary>Findings that ask a person to act.</summary>
    public required int RedCount { get; init; }

    /// <summary>Findings that ask a person to look.</summary>
    public required int AmberCount { get; init; }
}
