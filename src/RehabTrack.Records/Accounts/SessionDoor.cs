using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Begins sessions, looks whether they live, confirms and ends them: what the web does once it knows who somebody is.</summary>
public sealed class SessionDoor(RecordsAccess access, AccessBook book)
{
    private const int LongestBrowser = 200;
    private static readonly SignInSettings Settings = new();

    /// <summary>Begins one; the actor answered carries it.</summary>
    /// <param name="person">Who proved to be who they are.</param>
    /// <param name="browser">What the browser calls itself.</param>
    /// <param name="isDemo">Whether it is one of the demo, which never asks for a password.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Actor> BeginAsync(Actor person, string? browser, bool isDemo, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(person);
        DateTime now = access.Now;
        SessionRecord session = new()
        {
            Id = NewId.At(now),
            PersonId = person.PersonId,
            Browser = Shortened(browser),
            BegunAt = now,
            LastSeenAt = now,
            IsDemo = isDemo,
        };
        await using RecordsContext records = await access.OpenAsync(person.PracticeId, null, cancellation);
        await EndedLongAgo(records, now).ExecuteDeleteAsync(cancellation);
        records.Sessions.Add(session);
        await records.SaveChangesAsync(cancellation);
        await book.NoteAsync(person.PracticeId, person.PersonId, AccessEvent.SignedIn, session.Browser, cancellation);
        return person with { SessionId = session.Id };
    }

    /// <summary>Whether the actor's session lives, and notes that it was seen.</summary>
    public async Task<bool> LivesAsync(Actor actor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.SessionId is not { } id)
        {
            return false;
        }

        DateTime now = access.Now;
        await using RecordsContext records = await access.OpenAsync(actor.PracticeId, null, cancellation);
        SessionRecord? session = await SessionLife.FindAsync(records, id, actor.PersonId, now);
        if (
            session is null
            || !await records.People.AnyAsync(
                person => person.Id == actor.PersonId && person.CanSignIn && person.ArchivedAt == null && person.Role == actor.Role,
                cancellation
            )
        )
        {
            return false;
        }

        await SessionLife.SeeAsync(access, records, session, now);
        return true;
    }

    /// <summary>The person has just shown afresh who they are: one signature may be given for a while.</summary>
    public async Task ConfirmAsync(Actor actor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(actor);
        DateTime until = access.Now + Settings.ConfirmTime;
        await using RecordsContext records = await access.OpenAsync(actor.PracticeId, null, cancellation);
        await records
            .Sessions.Where(session => session.Id == actor.SessionId && session.PersonId == actor.PersonId && session.EndedAt == null)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.ConfirmedUntil, until), cancellation);
        await book.NoteAsync(actor.PracticeId, actor.PersonId, AccessEvent.Confirmed, null, cancellation);
    }

    /// <summary>Ends the actor's own session.</summary>
    public async Task EndAsync(Actor actor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(actor);
        DateTime now = access.Now;
        await using RecordsContext records = await access.OpenAsync(actor.PracticeId, null, cancellation);
        int ended = await records
            .Sessions.Where(session => session.Id == actor.SessionId && session.PersonId == actor.PersonId && session.EndedAt == null)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.EndedAt, now), cancellation);
        if (ended > 0)
        {
            await book.NoteAsync(actor.PracticeId, actor.PersonId, AccessEvent.SignedOut, null, cancellation);
        }
    }

    /// <summary>
    /// Ends every session of a person and takes back what invitations are open: what a new password and a new second step do. An invitation that
    /// somebody else holds would undo them.
    /// </summary>
    public async Task EndAllAsync(Guid practiceId, Guid personId, CancellationToken cancellation = default)
    {
        DateTime now = access.Now;
        Writer self = new(personId, now, Guid.Empty, nameof(SessionDoor));
        await using RecordsContext records = await access.OpenAsync(practiceId, self, cancellation);
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        await SessionLife.EndAllAsync(records, personId, now, cancellation);
        await AccountWriting.RevokeInvitationsAsync(records, personId, personId, now, cancellation);
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static IQueryable<SessionRecord> EndedLongAgo(RecordsContext records, DateTime now)
    {
        DateTime oldest = now - Settings.EndedKept;
        return records.Sessions.Where(session => session.EndedAt < oldest || session.BegunAt < oldest - Settings.LongestSession);
    }

    private static string Shortened(string? browser)
    {
        string text = string.Concat((browser ?? "").Where(letter => !char.IsControl(letter))).Trim();
        return text[..Math.Min(text.Length, LongestBrowser)];
    }
}
