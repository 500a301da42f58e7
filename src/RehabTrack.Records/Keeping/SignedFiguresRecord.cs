using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Records.Keeping;

/// <summary>What the analysis said when an examination was signed or amended, as the person saw it; append-only.</summary>
internal sealed class SignedFiguresRecord
{
    public Guid Id { get; set; }

    public Guid PracticeId { get; set; }

    public Guid CaseId { get; set; }

    public Guid ExaminationId { get; set; }

    /// <summary>The version of the examination that was signed: 1 for the first.</summary>
    public int Number { get; set; }

    public DateTime At { get; set; }

    public Guid PersonId { get; set; }

    public required string EngineVersion { get; set; }

    /// <summary>SHA-256 of the settings, hexadecimal.</summary>
    public required string SettingsHash { get; set; }

    /// <summary>Fingerprint of all that the analysis read.</summary>
    public required string InputHash { get; set; }

    public DateOnly AsOf { get; set; }

    public Verdict Verdict { get; set; }

    /// <summary>The figures whole, with the settings, as JSON.</summary>
    public required string FiguresJson { get; set; }
}
