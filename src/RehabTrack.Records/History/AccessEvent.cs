namespace RehabTrack.Records.History;

/// <summary>What the trail notes of who came in, and of who was not let in. Kept by name: a name is never changed.</summary>
public enum AccessEvent
{
    /// <summary>A person signed in.</summary>
    SignedIn,

    /// <summary>A sign-in was refused.</summary>
    SignInRefused,

    /// <summary>An account was locked for a while after too many refusals.</summary>
    LockedOut,

    /// <summary>The second step of a sign-in was passed.</summary>
    SecondStepPassed,

    /// <summary>The second step of a sign-in was refused.</summary>
    SecondStepRefused,

    /// <summary>A person confirmed afresh who they are, to sign.</summary>
    Confirmed,

    /// <summary>The fresh confirmation was refused.</summary>
    ConfirmRefused,

    /// <summary>A person signed out.</summary>
    SignedOut,

    /// <summary>A session was ended from elsewhere.</summary>
    SessionEnded,

    /// <summary>A password was set or changed.</summary>
    PasswordChanged,

    /// <summary>A second step was set up, changed or taken away.</summary>
    SecondStepChanged,

    /// <summary>An invitation was made.</summary>
    InvitationMade,

    /// <summary>An invitation was used.</summary>
    InvitationUsed,

    /// <summary>The gate refused a right.</summary>
    RightRefused,

    /// <summary>A share link was made.</summary>
    LinkMade,

    /// <summary>A share link was opened.</summary>
    LinkOpened,

    /// <summary>A share link that is unknown, expired or taken back was tried.</summary>
    LinkRefused,

    /// <summary>A share link was taken back.</summary>
    LinkRevoked,

    /// <summary>Data were taken out as a file.</summary>
    DataExported,

    /// <summary>A backup was made by hand.</summary>
    BackupMade,
}
