using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Writes what a person chose to sign in with, new or instead of what was: inside the transaction of who asks.</summary>
internal static class AccountWriting
{
    /// <summary>The problem, or null when it was written. Sessions that were begun with the older password end.</summary>
    public static async Task<Problem?> ChooseAsync(
        RecordsContext records,
        PersonRecord person,
        AccountChoice choice,
        bool takesSecondStep,
        DateTime now,
        CancellationToken cancellation
    )
    {
        if (await NameProblemAsync(records, person.Id, choice, cancellation) is { } problem)
        {
            return problem;
        }

        string name = choice.SignInName.Trim();
        string folded = SignInAccount.Fold(name);
        SignInAccount? account = await records.Accounts.FirstOrDefaultAsync(kept => kept.PersonId == person.Id, cancellation);
        if (account is null)
        {
            account = new SignInAccount
            {
                PersonId = person.Id,
                SignInName = name,
                FoldedSignInName = folded,
            };
            records.Accounts.Add(account);
        }

        account.SignInName = name;
        account.FoldedSignInName = folded;
        account.PasswordHash = choice.PasswordHash;
        account.SecurityStamp = NewId.At(now).ToString("N");
        account.Version = Guid.CreateVersion7();
        account.FailedCount = 0;
        account.LockedUntil = null;
        if (takesSecondStep)
        {
            account.HasSecondStep = false;
            account.SealedKey = null;
            account.RecoveryHashes = "";
        }

        await SessionLife.EndAllAsync(records, person.Id, now, cancellation);
        return null;
    }

    /// <summary>What is wrong with the name that was chosen; null when it is taken. One account of a name on the whole server.</summary>
    /// <param name="records">Of any practice, or of none.</param>
    /// <param name="personId">Who chose; null for somebody who is not there yet.</param>
    /// <param name="choice">What they chose.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<Problem?> NameProblemAsync(
        RecordsContext records,
        Guid? personId,
        AccountChoice choice,
        CancellationToken cancellation
    )
    {
        Checks checks = new();
        string name = checks.Name("signInName", choice.SignInName);
        if (checks.Any)
        {
            return checks.Problems[0];
        }

        string folded = SignInAccount.Fold(name);
        bool taken = await records
            .Accounts.IgnoreQueryFilters()
            .AnyAsync(other => other.FoldedSignInName == folded && other.PersonId != personId, cancellation);
        return taken ? new Problem("signInName", "sign-in-name-taken", name) : null;
    }

    /// <summary>A new invitation; not yet written.</summary>
    public static InvitationRecord Invitation(Guid personId, Guid madeById, string secretHash, bool takesSecondStep, DateTime now) =>
        new()
        {
            Id = NewId.At(now),
            SecretHash = SecretRecord.CheckedHash(secretHash),
            MadeById = madeById,
            MadeAt = now,
            PersonId = personId,
            ExpiresAt = now + new SignInSettings().InvitationTime,
            TakesSecondStep = takesSecondStep,
        };

    /// <summary>Takes back the invitations of a person that are still open; written with what follows.</summary>
    public static async Task RevokeInvitationsAsync(
        RecordsContext records,
        Guid personId,
        Guid byId,
        DateTime now,
        CancellationToken cancellation
    )
    {
        List<InvitationRecord> open = await records
            .Invitations.Where(invitation => invitation.PersonId == personId && invitation.UsedAt == null && invitation.RevokedAt == null)
            .ToListAsync(cancellation);
        open.ForEach(invitation => invitation.Revoke(now, byId));
    }
}
