using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Room;

/// <summary>
/// Notes what was refused: who, which use case or page, and which record where the question names one. What is refused to the same person in
/// the same place within a minute is noted once: one page may ask again and again, and the first time tells as much.
/// </summary>
internal static class RefusedRight
{
    /// <summary>How many of the person's last lines are looked through for the same refusal.</summary>
    private const int LinesBack = 50;
    private static readonly TimeSpan Once = TimeSpan.FromMinutes(1);

    public static async Task NoteAsync(RecordsContext records, Actor actor, string useCase, object? input, DateTime now)
    {
        records.Enter(actor.PracticeId, new Writer(actor.PersonId, now, Guid.Empty, useCase));
        // Who asks and goes away at once is noted all the same.
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(CancellationToken.None);
        var last = await records
            .Changes.Where(line => line.PersonId == actor.PersonId && line.Number >= 1)
            .OrderByDescending(line => line.Number)
            .Take(LinesBack)
            .Select(line => new
            {
                line.Kind,
                line.UseCase,
                line.At,
                line.AfterJson,
            })
            .ToListAsync(CancellationToken.None);
        if (
            last.Exists(line =>
                line.Kind == AccessLine.Kind
                && line.UseCase == useCase
                && (now - line.At).Duration() < Once
                && AccessLine.EventOf(line.AfterJson) == AccessEvent.RightRefused
            )
        )
        {
            return;
        }

        records.Changes.Add(AccessLine.Of(records, AccessEvent.RightRefused, RecordOf(input), null));
        await records.SaveChangesAsync(CancellationToken.None);
        await transaction.CommitAsync(CancellationToken.None);
    }

    private static Guid? RecordOf(object? input) =>
        input switch
        {
            Guid id => id,
            RecordInput record => record.Id,
            _ => null,
        };
}
