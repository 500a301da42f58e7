namespace RehabTrack.Web.Features.Reminders;

/// <summary>How the way to the mail server is sealed.</summary>
public enum MailSecurity
{
    /// <summary>Begins open and must become sealed before anything is said (usual on port 587).</summary>
    StartTls,

    /// <summary>Sealed from the first byte (usual on port 465).</summary>
    Tls,

    /// <summary>Not sealed; for a server on this machine only.</summary>
    None,
}
