using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;

namespace RehabTrack.Records.Accounts;

/// <summary>Turns the secret of an invitation into a password, once. Unknown, used, taken back and expired are one and the same answer: none.</summary>
public sealed class InvitationDoor(RecordsAccess access)
{
    /// <summary>What an invitation shows; null when it is not alive.</summary>
    /// <param name="secretHash">SHA-256 of the secret, 64 lower-case hexadecimal digits.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<InvitationView?> FindAsync(string secretHash, CancellationToken cancellation = default)
    {
        if (await SecretDoor.PracticeOfAsync<InvitationRecord>(access, secretHash, cancellation) is not { } practiceId)
        {
            return null;
        }

        await using RecordsContext records = await access.OpenAsync(practiceId, null, cancellation);
        if (await LivingAsync(records, secretHash, access.Now, cancellation) is not { } found)
        {
            return null;
        }

        SignInAccount? account = await records
            .Accounts.AsNoTracking()
            .FirstOrDefaultAsync(kept => kept.PersonId == found.Person.Id, cancellation);
        string practice = await records.Practices.Select(kept => kept.Name).SingleAsync(cancellation);
        return new InvitationView(
            ActorOf(found.Person),
            practice,
            account?.SignInName ?? found.Person.Mail,
            account?.PasswordHash is not null
        );
    }

    /// <summary>
    /// Uses it up: the person signs in with what they chose from now on, and every session of theirs ends. Two who use it at once: one of them
    /// finds it used.
    /// </summary>
    public async Task<Outcome<Actor>> UseAsync(string secretHash, AccountChoice choice, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(choice);
        DateTime now = access.Now;
        if (await SecretDoor.PracticeOfAsync<InvitationRecord>(access, secretHash, cancellation) is not { } practiceId)
        {
            return RecordProblems.NotFound("invitation");
        }

        await using RecordsContext records = await access.OpenAsync(practiceId, null, cancellation);
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        if (await LivingAsync(records, secretHash, now, cancellation) is not { } found)
        {
            return RecordProblems.NotFound("invitation");
        }

        if (
            await AccountWriting.ChooseAsync(records, found.Person, choice, found.Invitation.TakesSecondStep, now, cancellation) is
            { } taken
        )
        {
            return taken;
        }

        found.Invitation.UsedAt = now;
        records.Enter(practiceId, new Writer(found.Person.Id, now, Guid.Empty, nameof(InvitationDoor)));
        records.Changes.Add(AccessLine.Of(records, AccessEvent.InvitationUsed, found.Person.Id, null));
        records.Changes.Add(AccessLine.Of(records, AccessEvent.PasswordChanged, found.Person.Id, null));
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return ActorOf(found.Person);
    }

    /// <summary>Makes an invitation for whoever has the data folder in hand; it takes the second step away, too.</summary>
    /// <param name="signInName">Whose.</param>
    /// <param name="secretHash">SHA-256 of the secret, 64 lower-case hexadecimal digits.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>False when nobody who may sign in has the name.</returns>
    public async Task<bool> MakeAsync(string signInName, string secretHash, CancellationToken cancellation = default)
    {
        DateTime now = access.Now;
        string folded = SignInAccount.Fold(signInName);
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        SignInAccount? account = await all
            .Accounts.IgnoreQueryFilters()
            .AsNoTracking()
            .FirstOrDefaultAsync(kept => kept.FoldedSignInName == folded, cancellation);
        if (account is null)
        {
            return false;
        }

        Writer program = new(Guid.Empty, now, Guid.Empty, nameof(InvitationDoor));
        await using RecordsContext records = await access.OpenAsync(account.PracticeId, program, cancellation);
        await using IDbContextTransaction transaction = await records.Database.BeginTransactionAsync(cancellation);
        if (
            !await records.People.AnyAsync(
                person => person.Id == account.PersonId && person.CanSignIn && person.ArchivedAt == null,
                cancellation
            )
        )
        {
            return false;
        }

        await AccountWriting.RevokeInvitationsAsync(records, account.PersonId, Guid.Empty, now, cancellation);
        records.Invitations.Add(AccountWriting.Invitation(account.PersonId, Guid.Empty, secretHash, takesSecondStep: true, now));
        records.Changes.Add(AccessLine.Of(records, AccessEvent.InvitationMade, account.PersonId, null));
        await records.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }

    private static async Task<Found?> LivingAsync(
        RecordsContext records,
        string secretHash,
        DateTime now,
        CancellationToken cancellation
    ) =>
        await (
            from invitation in records.Invitations
            join person in records.People on invitation.PersonId equals person.Id
            where
                invitation.SecretHash == secretHash
                && invitation.UsedAt == null
                && invitation.RevokedAt == null
                && invitation.ExpiresAt > now
                && person.CanSignIn
                && person.ArchivedAt == null
                && records.Practices.Any(practice => practice.ArchivedAt == null)
            select new Found(invitation, person)
        ).FirstOrDefaultAsync(cancellation);

    private static Actor ActorOf(PersonRecord person) => new(person.PracticeId, person.Id, person.Role, person.Name);

    private sealed record Found(InvitationRecord Invitation, PersonRecord Person);
}
