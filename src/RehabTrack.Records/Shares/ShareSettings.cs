using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Shares;

/// <summary>How long share links answer, and how often; defaults and sources stand in <c>shared/share-links.json</c>.</summary>
public sealed record ShareSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("share-links");

    /// <summary>Days for which a new link answers, at least 1.</summary>
    public int ExpiryDays { get; init; } = (int)Table["expiryDays"];

    /// <summary>Questions with a dead link that one network address may ask in a minute, at least 1.</summary>
    public int WrongPerMinute { get; init; } = (int)Table["wrongPerMinute"];

    /// <summary>Questions behind links, living or dead, that one network address may ask in a minute, at least 1.</summary>
    public int AskedPerMinute { get; init; } = (int)Table["askedPerMinute"];

    /// <summary>Concerns that one person from outside may report of one horse in an hour, at least 1.</summary>
    public int ConcernsPerHour { get; init; } = (int)Table["concernsPerHour"];

    /// <summary>Lines that one person from outside may add to one horse in an hour, at least 1.</summary>
    public int LinesPerHour { get; init; } = (int)Table["linesPerHour"];

    /// <summary>Minutes for which letters about concerns of one horse wait after the last one.</summary>
    public double ConcernLetterMinutes { get; init; } = Table["concernLetterMinutes"];
}
