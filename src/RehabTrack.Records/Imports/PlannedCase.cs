using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Imports;

/// <summary>What would be done with one case of a file.</summary>
internal sealed record PlannedCase
{
    public required CaseFile File { get; init; }

    public required CaseChoice Choice { get; init; }

    public required string HorseName { get; init; }

    public HorseRecord? Horse { get; init; }

    public PlannedHorse? NewHorse { get; init; }

    public bool MustChooseHorse { get; init; }

    public IReadOnlyList<HorseCandidate> MayBeSame { get; init; } = [];

    public KeptCase? Kept { get; init; }

    public IReadOnlyList<Guid> MayBeSameCase { get; init; } = [];

    public IReadOnlyList<FieldDifference> Differences { get; init; } = [];

    public IReadOnlyList<PlannedExamination> Examinations { get; init; } = [];

    public IReadOnlyList<Problem> Problems { get; init; } = [];
}
