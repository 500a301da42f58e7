namespace RehabTrack.Records.Referrals;

/// <summary>A referring vet for whom a report can be released.</summary>
/// <param name="PersonId">The person.</param>
/// <param name="Name">Their name.</param>
public sealed record ReportReader(Guid PersonId, string Name);
