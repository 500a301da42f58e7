using RehabTrack.Records.Accounts;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Room;

/// <summary>
/// What a person can ask of the records. There is one way in, and it asks the gate before anything else is looked at; nobody outside
/// this project can write another.
/// </summary>
/// <typeparam name="TInput">What is asked.</typeparam>
/// <typeparam name="TResult">What is answered.</typeparam>
public abstract class UseCase<TInput, TResult>
{
    private readonly RecordsAccess access;

    private protected UseCase(RecordsAccess access)
    {
        this.access = access;
    }

    /// <summary>The right it asks for.</summary>
    private protected abstract Right Right { get; }

    /// <summary>Asks.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="input">What is asked.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Outcome<TResult>> ExecuteAsync(Actor actor, TInput input, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(actor);
        try
        {
            DateTime now = access.Now;
            await using RecordsContext records = await access.OpenAsync(actor.PracticeId, WriterOf(actor, input, now), cancellation);
            Access? granted = await RightsGate.AskAsync(records, actor, Right, now);
            if (granted is null)
            {
                await RefusedRight.NoteAsync(records, actor, GetType().Name, input, now);
                return RecordProblems.NotAllowed;
            }

            ArgumentNullException.ThrowIfNull(input);
            await SessionLife.SeeAsync(access, records, granted.Session, now);
            Outcome<TResult> outcome = await RunAsync(new RecordsSession(records, granted, now), input, cancellation);
            if (granted.Reach == Reach.OwnHorses && !outcome.Succeeded && outcome.Problems.Any(RecordProblems.IsNotFound))
            {
                // Nobody from outside is offered what is not theirs: whoever asks for it all the same has tried.
                await using RecordsContext notes = await access.OpenAsync(actor.PracticeId, null, cancellation);
                await RefusedRight.NoteAsync(notes, actor, GetType().Name, input, now);
            }

            return outcome;
        }
        catch (Exception broken) when (access.TroubleOf(broken) is { } trouble)
        {
            return trouble;
        }
    }

    private protected abstract Task<Outcome<TResult>> RunAsync(RecordsSession session, TInput input, CancellationToken cancellation);

    private protected virtual Writer? WriterOf(Actor actor, TInput input, DateTime now) => null;
}
