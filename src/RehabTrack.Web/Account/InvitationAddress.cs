namespace RehabTrack.Web.Account;

/// <summary>That a request came with an invitation: its secret is set aside before anything that logs has seen the path.</summary>
/// <param name="secret">The secret as it stood in the address.</param>
public sealed class InvitationAddress(string secret)
{
    /// <summary>The page of all invitations, and what their addresses begin with.</summary>
    public const string Prefix = "/invited";

    /// <summary>The secret as it stood in the address.</summary>
    public string Secret { get; } = secret;

    /// <summary>The path of an invitation by its secret.</summary>
    public static string PathOf(string secret) => $"{Prefix}/{secret}";

    /// <summary>The invitation of a request; null when it came without one.</summary>
    public static InvitationAddress? Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Features.Get<InvitationAddress>();
    }

    /// <summary>Takes a path apart; null when it is no invitation's.</summary>
    public static InvitationAddress? Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.StartsWith($"{Prefix}/", StringComparison.OrdinalIgnoreCase)
            ? new InvitationAddress(path[(Prefix.Length + 1)..])
            : null;
    }
}
