using RehabTrack.Records.Room;

namespace RehabTrack.Records.Referrals;

/// <summary>A report to release.</summary>
/// <param name="CommandId">Names the wish.</param>
/// <param name="CaseId">The case.</param>
/// <param name="PersonId">The referring vet who shall read it.</param>
/// <param name="Words">What the vet writes for this reader; null when nothing.</param>
public sealed record ReleaseReportInput(Guid CommandId, Guid CaseId, Guid PersonId, string? Words) : ICommand;
