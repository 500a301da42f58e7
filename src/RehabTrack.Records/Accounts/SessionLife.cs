using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;

namespace RehabTrack.Records.Accounts;

/// <summary>Which sessions live at a moment. It is asked anew each time: an ended session opens nothing more, in an open page neither.</summary>
internal static class SessionLife
{
    private static readonly SignInSettings Settings = new();

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

    /// <summary>Whether a signature may be given in it now.</summary>
    public static bool IsConfirmed(SessionRecord session, DateTime now) => session.IsDemo || session.ConfirmedUntil > now;

    /// <summary>One confirmation serves one signature.</summary>
    public static Task UseUpAsync(RecordsContext records, Actor actor) =>
        records
            .Sessions.Where(session => session.Id == actor.SessionId && session.ConfirmedUntil != null)
            .ExecuteUpdateAsync(session => session.SetProperty(row => row.ConfirmedUntil, (DateTime?)null));

    private static bool Lives(SessionRecord session, DateTime now) =>
        session.EndedAt is null && now - session.LastSeenAt < Settings.IdleTime && now - session.BegunAt < Settings.LongestSession;
}
