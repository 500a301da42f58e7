using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>
/// Empties the notes of access that were kept as long as <c>shared/retention.json</c> says; the trail still fits. Lets go, too, of the answers
/// to forms that save themselves, of which there is one for every pause in typing.
/// </summary>
public sealed class ForgetAccess(RecordsAccess access, VerifyTrail trails)
{
    private static readonly ReferenceTable Retention = ReferenceTable.Load("retention");
    private static readonly TimeSpan Kept = TimeSpan.FromDays(Retention["accessDays"]);
    private static readonly TimeSpan AnswersKept = TimeSpan.FromDays(Retention["autosaveAnswerDays"]);
    private static readonly string[] Autosaves = [nameof(SaveDraft), nameof(SavePlanDraft), nameof(KeepTyped)];

    /// <summary>Does it for all practices, and answers how many notes were emptied.</summary>
    public async Task<int> RunAsync(CancellationToken cancellation = default)
    {
        DateTime now = access.Now;
        DateTime oldest = now - Kept;
        DateTime oldestAnswer = now - AnswersKept;
        int emptied = 0;
        foreach (Guid practice in (await trails.PracticesAsync(cancellation)).Append(Guid.Empty))
        {
            Writer program = new(Guid.Empty, now, Guid.Empty, nameof(ForgetAccess));
            await using RecordsContext records = await access.OpenAsync(practice, program, cancellation);
            await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
            emptied += await Erasure.EmptyAsync(
                records,
                records.Changes.Where(line => line.Kind == AccessLine.Kind && line.At < oldest),
                ErasureReason.KeptLongEnough,
                null,
                cancellation
            );
            await records
                .AppliedCommands.Where(applied => Autosaves.Contains(applied.UseCase) && applied.At < oldestAnswer)
                .ExecuteDeleteAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return emptied;
    }
}
