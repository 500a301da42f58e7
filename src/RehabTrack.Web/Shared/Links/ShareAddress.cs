using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Shared.Links;

/// <summary>That a request came under a share link: set aside before anything that logs has seen the path.</summary>
/// <param name="secret">The secret as it stood in the address.</param>
/// <param name="rest">The path behind it, "" or beginning with a slash.</param>
public sealed class ShareAddress(string secret, string rest)
{
    /// <summary>What the paths of all links begin with.</summary>
    public const string Prefix = "/s";

    /// <summary>The secret as it stood in the address.</summary>
    public string Secret { get; } = secret;

    /// <summary>The path behind it.</summary>
    public string Rest { get; } = rest;

    /// <summary>Who comes through the link; null before it was looked up, and when it is dead.</summary>
    public Actor? Actor { get; set; }

    /// <summary>The path of a link by its secret.</summary>
    public static string PathOf(string secret) => $"{Prefix}/{secret}";

    /// <summary>The link of a request; null when it came another way.</summary>
    public static ShareAddress? Of(HttpContext? context) => context?.Features.Get<ShareAddress>();

    /// <summary>Takes a path apart; null when it is no link's.</summary>
    public static ShareAddress? Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (!path.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) || (path.Length > Prefix.Length && path[Prefix.Length] != '/'))
        {
            return null;
        }

        string tail = path.Length > Prefix.Length ? path[(Prefix.Length + 1)..] : "";
        int slash = tail.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? new ShareAddress(tail, "") : new ShareAddress(tail[..slash], tail[slash..]);
    }
}
