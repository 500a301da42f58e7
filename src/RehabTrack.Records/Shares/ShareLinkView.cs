namespace RehabTrack.Records.Shares;

/// <summary>A share link as the practice sees it, without its secret.</summary>
/// <param name="Id">Identity.</param>
/// <param name="Version">Version token.</param>
/// <param name="MadeBy">Who made it.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="ExpiresAt">From then on it answers no more, UTC.</param>
/// <param name="LastSeenAt">When it was last opened, UTC; null when never.</param>
/// <param name="IsExpired">Whether its time has run out.</param>
public sealed record ShareLinkView(
    Guid Id,
    Guid Version,
    string MadeBy,
    DateTime MadeAt,
    DateTime ExpiresAt,
    DateTime? LastSeenAt,
    bool IsExpired
);
