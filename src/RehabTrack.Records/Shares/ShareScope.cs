using RehabTrack.Records.Horses;

namespace RehabTrack.Records.Shares;

/// <summary>To what a share link holds whoever comes through it.</summary>
/// <param name="Relation">Only horses beside which the person stands as this.</param>
/// <param name="HorseId">Only this horse; null for a trainer's link.</param>
/// <param name="YardId">For a trainer only horses in this yard; null for horses that stand in none.</param>
/// <param name="ReportId">The one report that a referring vet's link opens; null for the others'.</param>
internal sealed record ShareScope(HorseRelation Relation, Guid? HorseId, Guid? YardId, Guid? ReportId);
