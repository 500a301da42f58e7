namespace RehabTrack.Records.Shares;

/// <summary>Share links to look after.</summary>
/// <param name="TimeZone">The practice's time zone.</param>
/// <param name="PracticeName">The practice's name, for a print.</param>
/// <param name="PracticePhone">Its number, for a print; null when not given.</param>
/// <param name="Lines">The links, by person and horse.</param>
public sealed record ShareLines(string TimeZone, string PracticeName, string? PracticePhone, IReadOnlyList<ShareLine> Lines);
