using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>How a person stands with signing in.</summary>
public sealed class GetAccount(RecordsAccess access) : UseCase<Guid, AccountStanding>(access)
{
    private protected override Right Right => Right.ChangeStaff;

    private protected override async Task<Outcome<AccountStanding>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        PersonRecord? person = await records.People.AsNoTracking().FirstOrDefaultAsync(record => record.Id == input, cancellation);
        if (person is null)
        {
            return RecordProblems.NotFound("person");
        }

        SignInAccount? account = await records.Accounts.AsNoTracking().FirstOrDefaultAsync(kept => kept.PersonId == input, cancellation);
        DateTime? invitedUntil = await records
            .Invitations.Where(invitation =>
                invitation.PersonId == input
                && invitation.UsedAt == null
                && invitation.RevokedAt == null
                && invitation.ExpiresAt > session.Now
            )
            .OrderByDescending(invitation => invitation.Id)
            .Select(invitation => (DateTime?)invitation.ExpiresAt)
            .FirstOrDefaultAsync(cancellation);
        int open = await SessionLife.Of(records, input, session.Now).CountAsync(cancellation);
        return new AccountStanding(
            person.CanSignIn && person.ArchivedAt is null,
            account?.PasswordHash is null ? null : account.SignInName,
            account?.HasSecondStep == true,
            invitedUntil,
            open,
            session.Practice.TimeZone
        );
    }
}
