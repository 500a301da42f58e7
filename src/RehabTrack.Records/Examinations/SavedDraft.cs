namespace RehabTrack.Records.Examinations;

/// <summary>A draft that was written.</summary>
/// <param name="Id">The draft.</param>
/// <param name="Version">Its version now.</param>
/// <param name="ReadingIds">The identities of its rows, in the order of entry: send them with the next save.</param>
public sealed record SavedDraft(Guid Id, Guid Version, IReadOnlyList<Guid> ReadingIds);
