using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>Lists the links that a person, or the people beside a horse, can be given, with those that stand and when they were last opened.</summary>
public sealed class ListShares(RecordsAccess access) : UseCase<ListSharesInput, ShareLines>(access)
{
    private protected override Right Right => Right.ShareLinks;

    private protected override async Task<Outcome<ShareLines>> RunAsync(
        RecordsSession session,
        ListSharesInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid[] personIds = await LivingShares
            .Periods(records)
            .Where(period =>
                (input.PersonId == null || period.PersonId == input.PersonId) && (input.HorseId == null || period.HorseId == input.HorseId)
            )
            .Select(period => period.PersonId)
            .Distinct()
            .ToArrayAsync(cancellation);
        var periods = await (
            from period in LivingShares.Periods(records)
            join person in records.People on period.PersonId equals person.Id
            join horse in records.Horses on period.HorseId equals horse.Id
            where personIds.Contains(person.Id)
            orderby period.Relation, person.FoldedName, person.Id, horse.FoldedName, horse.Id
            select new
            {
                PeriodId = period.Id,
                period.Relation,
                PersonId = person.Id,
                PersonName = person.Name,
                HorseId = horse.Id,
                HorseName = horse.Name,
            }
        ).ToArrayAsync(cancellation);
        List<ShareLinkRecord> standing = await records
            .ShareLinks.AsNoTracking()
            .Where(share => personIds.Contains(share.PersonId) && share.RevokedAt == null && share.ArchivedAt == null)
            .ToListAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            standing.Select(share => (Guid?)share.MadeById),
            cancellation
        );
        IEnumerable<ShareLine> lines = periods
            .GroupBy(period =>
                (period.PersonId, period.Relation, HorseId: period.Relation == HorseRelation.Owner ? period.HorseId : (Guid?)null)
            )
            .Where(group => input.HorseId is not { } asked || group.Any(period => period.HorseId == asked))
            .Select(group => new ShareLine
            {
                PersonId = group.Key.PersonId,
                PersonName = group.First().PersonName,
                Relation = group.Key.Relation,
                HorseId = group.Key.HorseId,
                HorseNames = [.. group.Select(period => period.HorseName).Distinct(StringComparer.Ordinal)],
                Link = standing
                    .Where(share =>
                        share.PersonId == group.Key.PersonId
                        && share.Relation == group.Key.Relation
                        && share.HorseId == group.Key.HorseId
                        && (share.HorseLinkId is null || group.Any(period => period.PeriodId == share.HorseLinkId))
                    )
                    .MaxBy(share => share.MadeAt)
                    is { } share
                    ? new ShareLinkView(
                        share.Id,
                        share.Version,
                        PersonNames.Name(names, share.MadeById) ?? "",
                        share.MadeAt,
                        share.ExpiresAt,
                        share.LastSeenAt,
                        share.ExpiresAt <= session.Now
                    )
                    : null,
            });
        return new ShareLines(session.Practice.TimeZone, session.Practice.Name, session.Practice.Phone, [.. lines]);
    }
}
