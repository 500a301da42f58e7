namespace RehabTrack.Web.Hosting;

/// <summary>How this server was started.</summary>
/// <param name="IsDemo">Whether horses and people are invented.</param>
/// <param name="DataFolder">Where database and files are kept.</param>
/// <param name="IsSealed">Whether browsers come by TLS only: through a proxy that is named, or to addresses that are all of it.</param>
public sealed record AppMode(bool IsDemo, string DataFolder, bool IsSealed = false)
{
    /// <summary>
    /// What a cookie is called. Behind TLS the name begins with the prefix to which browsers hold that it is Secure, of this very host and of all its
    /// paths: RFC 6265bis, 4.1.3.2 (from memory); OWASP ASVS 5.0, 3.3.1 and 3.3.3. Without TLS browsers would take no such cookie.
    /// </summary>
    /// <param name="purpose">What it is for; null for the session itself.</param>
    public string CookieName(string? purpose = null)
    {
        // Browsers share cookies between the ports of a machine: demo and practice must not sign each other out.
        string own = IsDemo ? "rehabtrack-demo" : "rehabtrack";
        return $"{(IsSealed ? "__Host-" : "")}{own}{(purpose is null ? "" : "-" + purpose)}";
    }
}
