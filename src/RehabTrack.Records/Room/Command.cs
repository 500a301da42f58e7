using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Room;

/// <summary>
/// A use case that writes: all of it or nothing, once a command id, with the summaries of the cases it touched renewed in the same
/// transaction.
/// </summary>
/// <typeparam name="TInput">What is asked.</typeparam>
/// <typeparam name="TResult">What is answered.</typeparam>
public abstract class Command<TInput, TResult> : UseCase<TInput, TResult>
    where TInput : ICommand
{
    private protected Command(RecordsAccess access)
        : base(access) { }

    /// <summary>Whether the person shows afresh who they are, each time: for signatures, and for what opens or takes away a way in.</summary>
    private protected virtual bool NeedsConfirmation => false;

    private protected sealed override async Task<Outcome<TResult>> RunAsync(
        RecordsSession session,
        TInput input,
        CancellationToken cancellation
    )
    {
        if (input.CommandId == Guid.Empty)
        {
            throw new ArgumentException("A command needs an id of its own.", nameof(input));
        }

        RecordsContext records = session.Records;
        records.Database.AutoSavepointsEnabled = false;
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        AppliedCommandRecord? applied = await records
            .AppliedCommands.AsNoTracking()
            .FirstOrDefaultAsync(command => command.CommandId == input.CommandId, cancellation);
        if (applied is not null)
        {
            if (applied.UseCase != GetType().Name || applied.PersonId != session.Person.Id)
            {
                return RecordProblems.CommandReused;
            }

            return applied.ResultJson.Length > 0 ? Answer.Read(applied.ResultJson) : RecordProblems.AnswerErased;
        }

        // Within the transaction: two at once do not share one confirmation, and what is refused for something else uses none up.
        if (NeedsConfirmation && !await session.UseConfirmationAsync(cancellation))
        {
            return RecordProblems.NotConfirmed;
        }

        try
        {
            Outcome<TResult> outcome = await WriteAsync(session, input, cancellation);
            if (!outcome.Succeeded)
            {
                return outcome;
            }

            await records.SaveChangesAsync(cancellation);
            await SummaryRenewal.RenewAsync(session, session.TouchedCases, cancellation);
            records.AppliedCommands.Add(
                new AppliedCommandRecord
                {
                    PracticeId = session.Practice.Id,
                    CommandId = input.CommandId,
                    UseCase = GetType().Name,
                    PersonId = session.Person.Id,
                    At = session.Now,
                    ResultJson = Answer.Write(outcome),
                }
            );
            await records.SaveChangesAsync(cancellation);
            await transaction.CommitAsync(cancellation);
            return outcome;
        }
        catch (DbUpdateConcurrencyException)
        {
            return RecordProblems.ChangedMeanwhile;
        }
    }

    private protected abstract Task<Outcome<TResult>> WriteAsync(RecordsSession session, TInput input, CancellationToken cancellation);

    private protected sealed override Writer? WriterOf(Actor actor, TInput input, DateTime now) =>
        input is null ? null : new Writer(actor.PersonId, now, input.CommandId, GetType().Name);

    /// <summary>The answer of a command as it is kept for a repeat.</summary>
    private sealed record Answer(TResult Value, IReadOnlyList<Problem> Cautions)
    {
        public static string Write(Outcome<TResult> outcome) =>
            JsonSerializer.Serialize(new Answer(outcome.Value, outcome.Cautions), RecordJson.Options);

        public static Outcome<TResult> Read(string json)
        {
            Answer answer = JsonSerializer.Deserialize<Answer>(json, RecordJson.Options)!;
            return Outcome<TResult>.Of(answer.Value, answer.Cautions);
        }
    }
}
