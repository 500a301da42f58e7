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
            join kept in records.Yards on horse.YardId equals kept.Id into yards
            from yard in yards.DefaultIfEmpty()
            where personIds.Contains(person.Id) && period.Relation != HorseRelation.ReferringVet
            orderby period.Relation, person.FoldedName, person.Id, horse.FoldedName, horse.Id
            select new
            {
                PeriodId = period.Id,
                period.Relation,
                PersonId = person.Id,
                PersonName = person.Name,
                HorseId = horse.Id,
                HorseName = horse.Name,
                horse.YardId,
                YardName = yard == null ? null : yard.Name,
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
                period.Relation == HorseRelation.Owner
                    ? (period.PersonId, period.Relation, HorseId: period.HorseId, YardId: null)
                    : (period.PersonId, period.Relation, HorseId: (Guid?)null, period.YardId)
            )
            .Where(group => input.HorseId is not { } asked || group.Any(period => period.HorseId == asked))
            .Select(group => new ShareLine
            {
                PersonId = group.Key.PersonId,
                PersonName = group.First().PersonName,
                Relation = group.Key.Relation,
                HorseId = group.Key.HorseId,
                YardId = group.Key.YardId,
                YardName = group.Key.YardId is null ? null : group.First().YardName,
                ReportId = null,
                ReportDate = null,
                HorseNames = [.. group.Select(period => period.HorseName).Distinct(StringComparer.Ordinal)],
                Link = LinkOf(
                    session,
                    names,
                    standing.Where(share =>
                        share.PersonId == group.Key.PersonId
                        && share.Relation == group.Key.Relation
                        && share.HorseId == group.Key.HorseId
                        && share.YardId == group.Key.YardId
                        && (share.HorseLinkId is null || group.Any(period => period.PeriodId == share.HorseLinkId))
                    )
                ),
            });
        var reports = await (
            from report in LivingShares.Reports(records)
            join person in records.People on report.PersonId equals person.Id
            join horse in records.Horses on report.HorseId equals horse.Id
            where personIds.Contains(person.Id) && (input.HorseId == null || report.HorseId == input.HorseId)
            orderby person.FoldedName, person.Id, horse.FoldedName, horse.Id, report.ReleasedAt descending, report.Id descending
            select new
            {
                ReportId = report.Id,
                report.Date,
                PersonId = person.Id,
                PersonName = person.Name,
                HorseId = horse.Id,
                HorseName = horse.Name,
            }
        ).ToArrayAsync(cancellation);
        IEnumerable<ShareLine> reportLines = reports.Select(report => new ShareLine
        {
            PersonId = report.PersonId,
            PersonName = report.PersonName,
            Relation = HorseRelation.ReferringVet,
            HorseId = report.HorseId,
            YardId = null,
            YardName = null,
            ReportId = report.ReportId,
            ReportDate = report.Date,
            HorseNames = [report.HorseName],
            Link = LinkOf(session, names, standing.Where(share => share.ReportId == report.ReportId)),
        });
        return new ShareLines(session.Practice.TimeZone, session.Practice.Name, session.Practice.Phone, [.. lines, .. reportLines]);
    }

    /// <summary>The link that was given last; null when none stands.</summary>
    private static ShareLinkView? LinkOf(
        RecordsSession session,
        IReadOnlyDictionary<Guid, string> names,
        IEnumerable<ShareLinkRecord> standing
    ) =>
        standing.MaxBy(share => share.MadeAt) is { } share
            ? new ShareLinkView(
                share.Id,
                share.Version,
                PersonNames.Name(names, share.MadeById) ?? "",
                share.MadeAt,
                share.ExpiresAt,
                share.LastSeenAt,
                share.ExpiresAt <= session.Now
            )
            : null;
}
