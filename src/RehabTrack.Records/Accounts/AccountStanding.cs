namespace RehabTrack.Records.Accounts;

/// <summary>How a person stands with signing in, for who looks after people.</summary>
/// <param name="MaySignIn">Whether the person may sign in at all.</param>
/// <param name="SignInName">The name they sign in with; null before they chose a password.</param>
/// <param name="HasSecondStep">Whether a second step is asked for.</param>
/// <param name="InvitedUntil">Until when an invitation that was not used yet answers; null when there is none.</param>
/// <param name="OpenSessions">Browsers in which the person is signed in.</param>
/// <param name="TimeZone">The practice's time zone.</param>
public sealed record AccountStanding(
    bool MaySignIn,
    string? SignInName,
    bool HasSecondStep,
    DateTime? InvitedUntil,
    int OpenSessions,
    string TimeZone
);
