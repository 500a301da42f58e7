using System.Collections.Concurrent;
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
    MailSender sender,
    GetReminder getReminder,
    BeginReminder beginReminder,
    SettleReminder settleReminder,
    TimeProvider time
)
{
    private readonly ConcurrentDictionary<Guid, bool> _underWay = new();

    /// <summary>Whether there is a server to send by.</summary>
    public bool IsSetUp => sender.IsSetUp;

    /// <summary>Sends one reminder.</summary>
    /// <param name="actor">Who sends it.</param>
    /// <param name="wish">What shall be sent; its command id names the wish.</param>
    /// <param name="cancellation">Gives up before the letter goes; once it goes, its end is waited for.</param>
    /// <returns>The name of the person the server took it for, or what went wrong and how to mend it.</returns>
    public async Task<Outcome<string>> SendAsync(Actor actor, BeginReminderInput wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(wish);
        if (sender.Obstacle is { } obstacle)
        {
            return obstacle;
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
                return kept?.Trouble is { } earlier ? sender.Problem(earlier, reminder.Mail) : reminder.Name;
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
    private bool IsOlderWish(ReminderView kept) => time.GetUtcNow().UtcDateTime - kept.At > MailSender.Patience + MailSender.Patience;

    private async Task<Outcome<string>> SendAsync(Actor actor, BegunReminder reminder, MailText text)
    {
        string? trouble = await sender.TroubleAsync(reminder.Id.ToString("D"), reminder.Name, reminder.Mail, text);
        if (trouble != "mail-not-known")
        {
            await settleReminder.ExecuteAsync(actor, new SettleReminderInput(Guid.CreateVersion7(), reminder.Id, trouble));
        }

        return trouble is null ? reminder.Name : sender.Problem(trouble, reminder.Mail);
    }

    private static Outcome<string> Problems(IReadOnlyList<Problem> problems) => problems.ToList();
}
