using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Accounts;

/// <summary>Which sessions live at a moment. It is asked anew each time: an ended session opens nothing more, in an open page neither.</summary>
internal static class SessionLife
{
    private static readonly SignInSettings Settings = new();
    private static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    private static readonly Func<RecordsContext, Guid, Guid, Task<SessionRecord?>> ById = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id, Guid personId) =>
            records.Sessions.AsNoTracking().FirstOrDefault(session => session.Id == id && session.PersonId == personId)
    );

    /// <summary>The session of a person; null when it has ended.</summary>
    public static async Task<SessionRecord?> FindAsync(RecordsContext records, Guid id, Guid personId, DateTime now) =>
        await ById(records, id, personId) is { } session && Lives(session, now) ? session : null;

    /// <summary>Those of a person that live.</summary>
    public static IQueryable<SessionRecord> Of(RecordsContext records, Guid personId, DateTime now)
    {
        DateTime seenSince = now - Settings.IdleTime;
        DateTime begunSince = now - Settings.LongestSession;
        return records.Sessions.Where(session =>
            session.PersonId == personId && session.EndedAt == null && session.LastSeenAt > seenSince && session.BegunAt > begunSince
        );
    }

    /// <summary>Notes, to the minute, that somebody asked with a session: by a request, and at work in a page that is open.</summary>
    public static async Task SeeAsync(RecordsAccess access, RecordsContext records, SessionRecord? session, DateTime now)
    {
        if (session is null || now - session.LastSeenAt < SeenStep)
        {
            return;
        }

        try
        {
            await records
                .Sessions.Where(record => record.Id == session.Id)
                .ExecuteUpdateAsync(record => record.SetProperty(row => row.LastSeenAt, now));
        }
        catch (Exception full) when (access.TroubleOf(full) is not null)
        {
            // What cannot be noted must not keep anybody from reading.
        }
    }

    /// <summary>Uses a confirmation up, as it serves one signature; false when there was none, or somebody else was quicker.</summary>
    public static async Task<bool> UseUpAsync(RecordsContext records, Guid id, DateTime now, CancellationToken cancellation) =>
        await records
            .Sessions.Where(session => session.Id == id && session.ConfirmedUntil > now)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.ConfirmedUntil, (DateTime?)null), cancellation) > 0;

    /// <summary>Ends all of a person that were not ended.</summary>
    public static Task EndAllAsync(RecordsContext records, Guid personId, DateTime now, CancellationToken cancellation) =>
        records
            .Sessions.Where(session => session.PersonId == personId && session.EndedAt == null)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.EndedAt, now), cancellation);

    private static bool Lives(SessionRecord session, DateTime now) =>
        session.EndedAt is null && now - session.LastSeenAt < Settings.IdleTime && now - session.BegunAt < Settings.LongestSession;
}
