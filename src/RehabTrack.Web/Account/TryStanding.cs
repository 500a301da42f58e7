namespace RehabTrack.Web.Account;

/// <summary>Whether somebody who names an account may try to come in.</summary>
public enum TryStanding
{
    /// <summary>Not now, whatever they send.</summary>
    Refused,

    /// <summary>A browser in which nobody of the account has signed in: what is refused there counts towards the lock.</summary>
    Stranger,

    /// <summary>A browser that the account knows: it has tries of its own, and locks nobody.</summary>
    Known,
}
