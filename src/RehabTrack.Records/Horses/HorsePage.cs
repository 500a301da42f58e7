namespace RehabTrack.Records.Horses;

/// <summary>A page of horses.</summary>
/// <param name="Rows">The rows, by name.</param>
/// <param name="Total">How many there are in all.</param>
/// <param name="Page">The page, from 1.</param>
/// <param name="PageSize">Rows a page.</param>
public sealed record HorsePage(IReadOnlyList<HorseRow> Rows, int Total, int Page, int PageSize);
