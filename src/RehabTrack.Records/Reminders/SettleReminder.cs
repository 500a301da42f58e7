using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>Keeps what became of a reminder.</summary>
public sealed class SettleReminder(RecordsAccess access) : Command<SettleReminderInput, Saved>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        SettleReminderInput input,
        CancellationToken cancellation
    )
    {
        ReminderRecord? kept = await session.Records.Reminders.FirstOrDefaultAsync(
            reminder => reminder.Id == input.Id && reminder.State == ReminderState.Begun,
            cancellation
        );
        if (kept is null)
        {
            return RecordProblems.NotFound("reminder");
        }

        kept.State = input.Trouble is null ? ReminderState.Sent : ReminderState.Refused;
        kept.Trouble = input.Trouble;
        kept.SettledAt = session.Now;
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(kept.Id, kept.Version);
    }
}
