using System.Net;
using MimeKit;

namespace RehabTrack.Web.Features.Reminders;

/// <summary>The mail server for reminders, from configuration or environment; never from the database. See docs/operations.md.</summary>
public sealed record MailSettings
{
    private const int UsualPort = 587;

    /// <summary>Name of the server; null when none is set up.</summary>
    public string? Host { get; init; }

    /// <summary>Its port.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>How the way there is sealed.</summary>
    public MailSecurity Security { get; init; } = MailSecurity.StartTls;

    /// <summary>The name to sign in with; null when the server asks for none.</summary>
    public string? User { get; init; }

    /// <summary>The password.</summary>
    public string? Password { get; init; }

    /// <summary>The address reminders come from.</summary>
    public string? From { get; init; }

    /// <summary>Whether there is a server to send by, and a sender that can be read.</summary>
    public bool IsSetUp => !string.IsNullOrWhiteSpace(Host) && MailboxAddress.TryParse(From ?? "", out _);

    /// <summary>Whether the way to it is sealed, or does not leave this machine.</summary>
    public bool IsSafe =>
        Security != MailSecurity.None
        || Host == "localhost"
        || (IPAddress.TryParse(Host, out IPAddress? address) && IPAddress.IsLoopback(address));

    /// <summary>The password is not to be written anywhere.</summary>
    public override string ToString() => $"{Host}:{Port}";

    /// <summary>Reads the settings.</summary>
    /// <param name="configuration">The configuration of the program; its section is Mail.</param>
    public static MailSettings Read(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return configuration.GetSection("Mail").Get<MailSettings>() ?? new MailSettings();
    }
}
