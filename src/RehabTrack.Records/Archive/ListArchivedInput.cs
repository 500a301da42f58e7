namespace RehabTrack.Records.Archive;

/// <summary>Asks for what was put away.</summary>
/// <param name="Kind">Of which kind.</param>
/// <param name="HorseId">Only what belongs to this horse; null for all. People, cover and repeats belong to none.</param>
/// <param name="Page">The page, from 1.</param>
/// <param name="IsCount">Whether only to count that kind: what a page asks that merely leads there.</param>
public sealed record ListArchivedInput(ArchivedKind Kind, Guid? HorseId = null, int Page = 1, bool IsCount = false);
