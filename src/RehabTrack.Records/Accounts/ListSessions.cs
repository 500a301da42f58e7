using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Where the person who asks is signed in.</summary>
public sealed class ListSessions(RecordsAccess access) : UseCase<NoInput, OwnSessions>(access)
{
    private protected override Right Right => Right.KeepOwnAccount;

    private protected override async Task<Outcome<OwnSessions>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    ) =>
        new OwnSessions(
            await SessionLife
                .Of(session.Records, session.Person.Id, session.Now)
                .OrderByDescending(record => record.Id)
                .Select(record => new SessionView(record.Id, record.Browser, record.BegunAt, record.LastSeenAt))
                .ToListAsync(cancellation),
            session.Practice.TimeZone
        );
}
