using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Accounts;

/// <summary>How signing in behaves; defaults and sources stand in <c>shared/sign-in.json</c>.</summary>
public sealed record SignInSettings
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("sign-in");

    /// <summary>Letters of the shortest password, at least 12.</summary>
    public int ShortestPassword { get; init; } = (int)Table["shortestPassword"];

    /// <summary>Letters of the longest password that is taken whole.</summary>
    public int LongestPassword { get; init; } = (int)Table["longestPassword"];

    /// <summary>The least strength of a password, 0 to 4.</summary>
    public int LeastStrength { get; init; } = (int)Table["leastStrength"];

    /// <summary>Refusals after which unknown browsers are locked out.</summary>
    public int TriesBeforeLock { get; init; } = (int)Table["triesBeforeLock"];

    /// <summary>How long they are locked out.</summary>
    public TimeSpan LockTime { get; init; } = TimeSpan.FromMinutes(Table["lockMinutes"]);

    /// <summary>Tries that one network address has in a minute, for all names together.</summary>
    public int TriesPerMinute { get; init; } = (int)Table["triesPerMinute"];

    /// <summary>Tries that a browser known to an account has in the time of a lock.</summary>
    public int TriesOfKnownBrowser { get; init; } = (int)Table["triesOfKnownBrowser"];

    /// <summary>How long the second step may take after the first.</summary>
    public TimeSpan StepTime { get; init; } = TimeSpan.FromMinutes(Table["stepMinutes"]);

    /// <summary>How long a fresh confirmation holds, for one signature.</summary>
    public TimeSpan ConfirmTime { get; init; } = TimeSpan.FromMinutes(Table["confirmMinutes"]);

    /// <summary>After how long without a question a session ends.</summary>
    public TimeSpan IdleTime { get; init; } = TimeSpan.FromHours(Table["idleHours"]);

    /// <summary>After how long a session ends whatever happens.</summary>
    public TimeSpan LongestSession { get; init; } = TimeSpan.FromDays(Table["longestDays"]);

    /// <summary>For how long an invitation can be used.</summary>
    public TimeSpan InvitationTime { get; init; } = TimeSpan.FromHours(Table["invitationHours"]);

    /// <summary>For how long sessions that have ended are kept.</summary>
    public TimeSpan EndedKept { get; init; } = TimeSpan.FromDays(Table["endedKeptDays"]);
}
