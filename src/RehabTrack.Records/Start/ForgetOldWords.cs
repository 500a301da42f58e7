using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// Empties what is about people and was kept as long as the practice keeps it: notes of access, the addresses of letters, the words of calls;
/// the trail still fits. Lets go, too, of files that nobody imported and of the answers to forms that save themselves, of which there is one
/// for every pause in typing.
/// </summary>
public sealed class ForgetOldWords(RecordsAccess access, VerifyTrail trails)
{
    private static readonly string[] Autosaves = [nameof(SaveDraft), nameof(SavePlanDraft), nameof(KeepTyped)];

    /// <summary>Does it for all practices, and answers how many lines of the trail were emptied.</summary>
    public async Task<int> RunAsync(CancellationToken cancellation = default)
    {
        DateTime now = access.Now;
        int emptied = 0;
        foreach (Guid practice in (await trails.PracticesAsync(cancellation)).Append(Guid.Empty))
        {
            Writer program = new(Guid.Empty, now, Guid.Empty, nameof(ForgetOldWords));
            await using RecordsContext records = await access.OpenAsync(practice, program, cancellation);
            await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
            Retention kept = Retention.Of(await records.Practices.AsNoTracking().FirstOrDefaultAsync(cancellation));
            DateTime oldest = now.AddDays(-kept.AccessDays);
            emptied += await EmptyAsync(
                records,
                records.Changes.Where(line => line.Kind == AccessLine.Kind && line.At < oldest),
                cancellation
            );
            emptied += await ForgetContactsAsync(records, now.AddDays(-kept.ContactDays), cancellation);
            DateTime oldestFile = now.AddDays(-Retention.ImportFileDays);
            await records.ImportFiles.Where(file => file.HandedInAt < oldestFile).ExecuteDeleteAsync(cancellation);
            DateTime oldestAnswer = now.AddDays(-Retention.AutosaveAnswerDays);
            await records
                .AppliedCommands.Where(applied => Autosaves.Contains(applied.UseCase) && applied.At < oldestAnswer)
                .ExecuteDeleteAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return emptied;
    }

    // That a letter went and a call was made, when and with what outcome, is the horse's record and stays.
    private static async Task<int> ForgetContactsAsync(RecordsContext records, DateTime oldest, CancellationToken cancellation)
    {
        List<ReminderRecord> letters = await records
            .Reminders.Where(letter => letter.BegunAt < oldest && letter.Mail != "")
            .ToListAsync(cancellation);
        letters.ForEach(letter => letter.Mail = "");
        List<CallRecord> calls = await records.Calls.Where(call => call.NotedAt < oldest && call.Words != null).ToListAsync(cancellation);
        calls.ForEach(call => call.Words = null);
        Guid[] about = [.. letters.Select(letter => letter.Id), .. calls.Select(call => call.Id)];
        if (about.Length == 0)
        {
            return 0;
        }

        // What these writes tell of the words that go is emptied with the older lines.
        await records.SaveChangesAsync(cancellation);
        return await EmptyAsync(records, records.Changes.Where(line => about.Contains(line.RecordId)), cancellation);
    }

    private static Task<int> EmptyAsync(RecordsContext records, IQueryable<ChangeRecord> lines, CancellationToken cancellation) =>
        Erasure.EmptyAsync(records, lines, ErasureReason.KeptLongEnough, null, cancellation);
}
