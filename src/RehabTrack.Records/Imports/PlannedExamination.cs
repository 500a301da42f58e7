using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Imports;

/// <summary>What would be done with one examination of a file.</summary>
internal sealed record PlannedExamination
{
    public required Examination File { get; init; }

    public required ExaminationStanding Standing { get; init; }

    public ExaminationRecord? Kept { get; init; }

    public int KnownReadings { get; init; }

    public IReadOnlyList<FieldDifference> Differences { get; init; } = [];

    public bool Amend { get; init; }

    /// <summary>What it would say after the amendment.</summary>
    public ExaminationContent? Amended { get; init; }
}
