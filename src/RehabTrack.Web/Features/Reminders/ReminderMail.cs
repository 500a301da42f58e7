using System.Collections.Concurrent;
using System.Globalization;
using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Reminders;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Web.Features.Reminders;

/// <summary>
/// Sends reminders by mail. What is about to go is kept before the server is asked, and what it answered after; the same wish, sent again,
/// sends nothing twice.
/// </summary>
public sealed class ReminderMail(
    MailSettings settings,
    GetReminder getReminder,
    BeginReminder beginReminder,
    SettleReminder settleReminder,
    TimeProvider time
)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    private readonly ConcurrentDictionary<Guid, bool> _underWay = new();

    /// <summary>Whether there is a server to send by.</summary>
    public bool IsSetUp => settings.IsSetUp;

    /// <summary>Sends one reminder.</summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="wish">What shall be sent; its command id names the wish.</param>
    /// <param name="cancellation">Gives up before the letter goes; once it goes, its end is waited for.</param>
    /// <returns>The name of the person the server took it for, or what went wrong and how to mend it.</returns>
    public async Task<Outcome<string>> SendAsync(Actor actor, BeginReminderInput wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(wish);
        if (!settings.IsSetUp)
        {
            return new Problem("", "mail-not-configured");
        }

        if (!settings.IsSafe)
        {
            return new Problem("", "mail-not-secure", settings.Host!);
        }

        Outcome<BegunReminder> begun = await beginReminder.ExecuteAsync(actor, wish, cancellation);
        if (!begun.Succeeded)
        {
            return Problems(begun.Problems);
        }

        BegunReminder reminder = begun.Value;
        if (!_underWay.TryAdd(reminder.Id, true))
        {
            return reminder.Name;
        }

        try
        {
            Outcome<ReminderLetter> letter = await getReminder.ExecuteAsync(actor, wish.CaseId, cancellation);
            if (!letter.Succeeded)
            {
                return Problems(letter.Problems);
            }

            ReminderView? kept = letter.Value.Mailed.FirstOrDefault(mailed => mailed.Id == reminder.Id);
            if (kept is null or { State: not ReminderState.Begun })
            {
                return kept?.Trouble is { } earlier ? Problem(earlier, reminder) : reminder.Name;
            }

            if (IsOlderWish(kept))
            {
                return new Problem("", "mail-not-known");
            }

            return await SendAsync(actor, reminder, ReminderText.Of(letter.Value, reminder.Name));
        }
        finally
        {
            _underWay.TryRemove(reminder.Id, out _);
        }
    }

    /// <summary>A wish that was begun a while ago and never settled: the program ended in between, and nobody knows whether it went.</summary>
    private bool IsOlderWish(ReminderView kept) => time.GetUtcNow().UtcDateTime - kept.At > Patience + Patience;

    private async Task<Outcome<string>> SendAsync(Actor actor, BegunReminder reminder, ReminderText text)
    {
        string? trouble = await TroubleAsync(reminder, text);
        if (trouble != "mail-not-known")
        {
            await settleReminder.ExecuteAsync(actor, new SettleReminderInput(Guid.CreateVersion7(), reminder.Id, trouble));
        }

        return trouble is null ? reminder.Name : Problem(trouble, reminder);
    }

    /// <summary>The code of what went wrong; null when the server took the letter.</summary>
    private async Task<string?> TroubleAsync(BegunReminder reminder, ReminderText text)
    {
        MailboxAddress from = MailboxAddress.Parse(settings.From!);
        using MimeMessage message = new();
        message.From.Add(from);
        message.To.Add(new MailboxAddress(reminder.Name, reminder.Mail));
        message.Subject = text.Subject;
        message.MessageId = $"{reminder.Id:D}@{from.Domain}";
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

    private Problem Problem(string code, BegunReminder reminder) =>
        code switch
        {
            "mail-unreachable" => new Problem("", code, settings.Host!, settings.Port.ToString(CultureInfo.InvariantCulture)),
            "mail-sign-in-refused" => new Problem("", code, settings.Host!),
            "mail-refused" => new Problem("", code, reminder.Mail),
            _ => new Problem("", code),
        };

    private static Outcome<string> Problems(IReadOnlyList<Problem> problems) => problems.ToList();
}
