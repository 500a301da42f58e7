using System.Globalization;
using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Features.Reminders;

/// <summary>Hands single letters to the mail server of the settings, and says what became of them.</summary>
public sealed class MailSender(MailSettings settings, TimeProvider time)
{
    /// <summary>How long an answer of the server is waited for.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <summary>Whether there is a server to send by.</summary>
    public bool IsSetUp => settings.IsSetUp;

    /// <summary>What keeps every letter from being sent; null when nothing does.</summary>
    public Problem? Obstacle =>
        !settings.IsSetUp ? new Problem("", "mail-not-configured")
        : !settings.IsSafe ? new Problem("", "mail-not-secure", settings.Host!)
        : null;

    /// <summary>Sends one letter.</summary>
    /// <param name="id">Names the letter; the same letter sent again has the same id.</param>
    /// <param name="name">Who it is written to.</param>
    /// <param name="address">Their address.</param>
    /// <param name="text">The letter.</param>
    /// <returns>The code of what went wrong; null when the server took the letter.</returns>
    public async Task<string?> TroubleAsync(string id, string name, string address, MailText text)
    {
        ArgumentNullException.ThrowIfNull(text);
        MailboxAddress from = MailboxAddress.Parse(settings.From!);
        using MimeMessage message = new();
        message.From.Add(from);
        message.To.Add(new MailboxAddress(name, address));
        message.Subject = text.Subject;
        message.MessageId = $"{id}@{from.Domain}";
        message.Date = time.GetUtcNow();
        message.Body = new TextPart("plain") { Text = text.Body };
        using CancellationTokenSource patience = new(Patience);
        using SmtpClient client = new() { Timeout = (int)Patience.TotalMilliseconds };
        try
        {
            await client.ConnectAsync(settings.Host!, settings.Port, Security, patience.Token);
            if (!string.IsNullOrEmpty(settings.User))
            {
                await client.AuthenticateAsync(settings.User, settings.Password ?? "", patience.Token);
            }
        }
        catch (Exception broken) when (broken is AuthenticationException or NotSupportedException)
        {
            return client.IsConnected ? "mail-sign-in-refused" : "mail-unreachable";
        }
        catch (Exception broken) when (IsConnection(broken))
        {
            return "mail-unreachable";
        }

        try
        {
            await client.SendAsync(message, patience.Token);
        }
        catch (Exception broken) when (broken is SmtpCommandException or ServiceNotAuthenticatedException)
        {
            return "mail-refused";
        }
        catch (Exception broken) when (IsConnection(broken))
        {
            return "mail-not-known";
        }

        await LeaveAsync(client, patience.Token);
        return null;
    }

    /// <summary>The letter was taken: a goodbye that fails changes nothing.</summary>
    private static async Task LeaveAsync(SmtpClient client, CancellationToken cancellation)
    {
        try
        {
            await client.DisconnectAsync(true, cancellation);
        }
        catch (Exception broken) when (IsConnection(broken))
        {
            client.Dispose();
        }
    }

    private SecureSocketOptions Security =>
        settings.Security switch
        {
            MailSecurity.StartTls => SecureSocketOptions.StartTls,
            MailSecurity.Tls => SecureSocketOptions.SslOnConnect,
            MailSecurity.None => SecureSocketOptions.None,
            _ => throw new InvalidOperationException("The mail server's security is not known."),
        };

    private static bool IsConnection(Exception broken) =>
        broken
            is SocketException
                or IOException
                or ProtocolException
                or CommandException
                or SslHandshakeException
                or OperationCanceledException
                or TimeoutException
                or NotSupportedException
                or ServiceNotConnectedException;

    /// <summary>What went wrong with a letter, with what a person needs to mend it.</summary>
    /// <param name="code">The code.</param>
    /// <param name="address">Where the letter was to go.</param>
    public Problem Problem(string code, string address) =>
        code switch
        {
            "mail-unreachable" => new Problem("", code, settings.Host!, settings.Port.ToString(CultureInfo.InvariantCulture)),
            "mail-sign-in-refused" => new Problem("", code, settings.Host!),
            "mail-refused" => new Problem("", code, address),
            _ => new Problem("", code),
        };
}
