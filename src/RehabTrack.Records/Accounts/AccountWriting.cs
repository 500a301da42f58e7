using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Writes what a person chose to sign in with, new or instead of what was: inside the transaction of who asks.</summary>
internal static class AccountWriting
{
    private const int LongestName = 200;

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
        string name = choice.SignInName.Trim();
        string folded = SignInAccount.Fold(name);
        if (folded.Length is 0 or > LongestName)
        {
            return folded.Length == 0
                ? new Problem("signInName", "field-empty")
                : new Problem("signInName", "text-too-long", RecordText.Of(folded.Length), RecordText.Of(LongestName));
        }

        bool taken = await records
            .Accounts.IgnoreQueryFilters()
            .AnyAsync(other => other.FoldedSignInName == folded && other.PersonId != person.Id, cancellation);
        if (taken)
        {
            return new Problem("signInName", "sign-in-name-taken", name);
        }

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

        await records
            .Sessions.Where(session => session.PersonId == person.Id && session.EndedAt == null)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.EndedAt, now), cancellation);
        return null;
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
