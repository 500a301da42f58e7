using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;

namespace RehabTrack.Records.Start;

/// <summary>
/// Turns the secret of a share link into who may ask: the person it was made for, held to what the link opens. The gate looks at the link again
/// at every use case.
/// </summary>
public sealed class ShareDoor(RecordsAccess access, AccessBook book)
{
    private static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    /// <summary>The trail notes that a link was opened, and that a dead one was tried, once in so long.</summary>
    private static readonly TimeSpan NotedStep = TimeSpan.FromDays(1);

    /// <summary>
    /// The actor, and the moment noted as the last at which the link was opened; null for a link that is unknown, expired, taken back, whose
    /// period has ended or whose person was put away.
    /// </summary>
    /// <param name="secretHash">SHA-256 of the secret, 64 lower-case hexadecimal digits.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Actor?> FindAsync(string secretHash, CancellationToken cancellation = default)
    {
        if (await SecretDoor.PracticeOfAsync<ShareLinkRecord>(access, secretHash, cancellation) is not { } practiceId)
        {
            return null;
        }

        DateTime now = access.Now;
        await using RecordsContext records = await access.OpenAsync(practiceId, null, cancellation);
        ShareLinkRecord? share = await records
            .ShareLinks.AsNoTracking()
            .FirstOrDefaultAsync(record => record.SecretHash == secretHash, cancellation);
        if (share is null)
        {
            return null;
        }

        PersonRecord? person = await (
            from living in LivingShares.Of(records, now)
            join beside in records.People on living.PersonId equals beside.Id
            where living.Id == share.Id && records.Practices.Any(practice => practice.ArchivedAt == null)
            select beside
        )
            .AsNoTracking()
            .FirstOrDefaultAsync(cancellation);
        if (person is null)
        {
            await NoteRefusedAsync(records, share, now, cancellation);
            return null;
        }

        try
        {
            await NoteSeenAsync(records, share, now, cancellation);
        }
        catch (Exception full) when (access.TroubleOf(full) is not null)
        {
            // What cannot be noted must not keep anybody from reading what is permitted.
        }

        return new Actor(practiceId, person.Id, person.Role, person.Name) { ShareId = share.Id };
    }

    /// <summary>
    /// The telephone number that a dead link may name: the practice's, where there is one practice only. With several it would tell whose link
    /// it once was.
    /// </summary>
    public async Task<string?> PhoneAsync(CancellationToken cancellation = default)
    {
        await using RecordsContext all = await access.OpenAsync(Guid.Empty, null, cancellation);
        PracticeRecord[] practices = await all
            .Practices.IgnoreQueryFilters()
            .AsNoTracking()
            .OrderBy(practice => practice.Id)
            .Take(2)
            .ToArrayAsync(cancellation);
        return practices is [{ ArchivedAt: null } only] ? only.Phone : null;
    }

    private async Task NoteSeenAsync(RecordsContext records, ShareLinkRecord share, DateTime now, CancellationToken cancellation)
    {
        if (now - share.LastSeenAt < SeenStep)
        {
            return;
        }

        bool isNoted = now - share.OpenNotedAt < NotedStep;
        DateTime notedAt = isNoted ? share.OpenNotedAt!.Value : now;
        await records
            .ShareLinks.Where(record => record.Id == share.Id)
            .ExecuteUpdateAsync(
                record => record.SetProperty(row => row.LastSeenAt, now).SetProperty(row => row.OpenNotedAt, notedAt),
                cancellation
            );
        if (!isNoted)
        {
            await book.NoteAsync(share.PracticeId, share.PersonId, AccessEvent.LinkOpened, IdOf(share), cancellation);
        }
    }

    private async Task NoteRefusedAsync(RecordsContext records, ShareLinkRecord share, DateTime now, CancellationToken cancellation)
    {
        if (now - share.RefusalNotedAt < NotedStep)
        {
            return;
        }

        await records
            .ShareLinks.Where(record => record.Id == share.Id)
            .ExecuteUpdateAsync(record => record.SetProperty(row => row.RefusalNotedAt, now), cancellation);
        await book.NoteAsync(share.PracticeId, share.PersonId, AccessEvent.LinkRefused, IdOf(share), cancellation);
    }

    private static string IdOf(ShareLinkRecord share) => RecordText.Of(share.Id);
}
