using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Reminders;

/// <summary>Reads what a reminder of a case's recheck is written from. Closed cases remind nobody.</summary>
public sealed class GetReminder(RecordsAccess access) : UseCase<Guid, ReminderLetter>(access)
{
    private protected override Right Right => Right.BookRechecks;

    private protected override Task<Outcome<ReminderLetter>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation) =>
        ReminderRows.LetterAsync(session, input, cancellation);
}
