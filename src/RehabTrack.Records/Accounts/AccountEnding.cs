using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>What ends with a person's right to sign in.</summary>
internal static class AccountEnding
{
    /// <summary>Ends all sessions and takes back what invitations are open.</summary>
    public static async Task EndAsync(RecordsSession session, Guid personId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        await SessionLife.EndAllAsync(records, personId, session.Now, cancellation);
        await AccountWriting.RevokeInvitationsAsync(records, personId, session.Person.Id, session.Now, cancellation);
    }

    /// <summary>Takes name, password and all sessions away for good.</summary>
    public static async Task ForgetAsync(RecordsContext records, Guid personId, CancellationToken cancellation)
    {
        await records.Sessions.Where(record => record.PersonId == personId).ExecuteDeleteAsync(cancellation);
        await records.Accounts.Where(account => account.PersonId == personId).ExecuteDeleteAsync(cancellation);
    }
}
