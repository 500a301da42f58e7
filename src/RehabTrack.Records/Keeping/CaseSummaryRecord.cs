using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Keeping;

/// <summary>What the analysis said of a case when it was last written, with what it rested on.</summary>
internal sealed class CaseSummaryRecord
{
    public Guid CaseId { get; set; }

    public Guid PracticeId { get; set; }

    public required string EngineVersion { get; set; }

    /// <summary>SHA-256 of the settings, hexadecimal.</summary>
    public required string SettingsHash { get; set; }

    public required string SettingsJson { get; set; }

    /// <summary>Fingerprint of all that the analysis read.</summary>
    public required string InputHash { get; set; }

    public DateOnly AsOf { get; set; }

    public DateTime ComputedAt { get; set; }

    public Verdict Verdict { get; set; }

    public VerdictReason Reason { get; set; }

    public Measure? Measure { get; set; }

    public double? RatePercentPer60Days { get; set; }

    public double? Lower95Percent { get; set; }

    public double? Upper95Percent { get; set; }

    public int ExaminationCount { get; set; }

    public DateOnly? FirstExamination { get; set; }

    public DateOnly? LastExamination { get; set; }

    /// <summary>The latest examination signed here; only these raise reminders.</summary>
    public DateOnly? LastSigned { get; set; }

    public int RedCount { get; set; }

    public int AmberCount { get; set; }

    public int NoteCount { get; set; }

    /// <summary>How much the case asks for a look: 0 not, 1 slow, 2 amber or no progress, 3 red or worsening.</summary>
    public int LookRank { get; set; }

    /// <summary>The worst findings, as JSON.</summary>
    public required string FindingsJson { get; set; }
}
