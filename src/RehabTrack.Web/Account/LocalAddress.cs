namespace RehabTrack.Web.Account;

/// <summary>Whether an address that somebody wants to go back to is one of ours.</summary>
public static class LocalAddress
{
    /// <summary>Whether it is a path of this server.</summary>
    public static bool Is(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal) && !address.StartsWith("/\\", StringComparison.Ordinal);
}
