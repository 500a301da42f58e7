using RehabTrack.Rechecks.Anatomy;

namespace RehabTrack.Records.Overview;

/// <summary>A draft on the start page.</summary>
/// <param name="ExaminationId">The draft.</param>
/// <param name="CaseId">Its case.</param>
/// <param name="HorseName">The horse's name.</param>
/// <param name="Limb">The case's limb.</param>
/// <param name="Date">The date of the visit.</param>
/// <param name="EnteredBy">Who wrote it; null when not known.</param>
/// <param name="WrittenAt">When, UTC.</param>
public sealed record DraftRow(
    Guid ExaminationId,
    Guid CaseId,
    string HorseName,
    Limb Limb,
    DateOnly Date,
    string? EnteredBy,
    DateTime WrittenAt
);
