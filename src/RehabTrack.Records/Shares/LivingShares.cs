using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>Which share links answer at a moment, and to whom one can be given. It is asked anew each time: nothing of it is remembered.</summary>
internal static class LivingShares
{
    /// <summary>
    /// Links that were not taken back, have not expired, whose person counts and still has the role, and whose person stands beside a horse:
    /// for an owner and a referring vet in the very period for which the link was made, for a trainer beside any horse in the link's yard. A
    /// referring vet's opens one report.
    /// </summary>
    public static IQueryable<ShareLinkRecord> Of(RecordsContext records, DateTime now) =>
        records
            .ShareLinks.AsNoTracking()
            .Where(share =>
                share.RevokedAt == null
                && share.ArchivedAt == null
                && share.ExpiresAt > now
                && Periods(records)
                    .Any(period =>
                        period.PersonId == share.PersonId
                        && period.Relation == share.Relation
                        && (share.HorseLinkId == null || period.Id == share.HorseLinkId)
                        && (
                            share.Relation != HorseRelation.Trainer
                            || records.Horses.Any(horse => horse.Id == period.HorseId && horse.YardId == share.YardId)
                        )
                    )
                && (
                    share.Relation != HorseRelation.ReferringVet
                    || Reports(records).Any(report => report.Id == share.ReportId && report.PersonId == share.PersonId)
                )
            );

    /// <summary>The periods in which a person stands beside a horse today and can be given a link for it.</summary>
    public static IQueryable<HorseLinkRecord> Periods(RecordsContext records) =>
        records
            .HorseLinks.AsNoTracking()
            .Where(period =>
                period.Until == null
                && records.Horses.Any(horse => horse.Id == period.HorseId && horse.ArchivedAt == null)
                && records.People.Any(person =>
                    person.Id == period.PersonId
                    && person.ArchivedAt == null
                    && (
                        (period.Relation == HorseRelation.Owner && person.Role == Role.Owner)
                        || (period.Relation == HorseRelation.Trainer && person.Role == Role.Trainer)
                        || (period.Relation == HorseRelation.ReferringVet && person.Role == Role.ReferringVet)
                    )
                )
            );

    /// <summary>The reports whose reader stands beside the horse in the very period in which the report was made.</summary>
    public static IQueryable<ReportRecord> Reports(RecordsContext records) =>
        records
            .Reports.AsNoTracking()
            .Where(report =>
                report.ArchivedAt == null
                && Periods(records)
                    .Any(period =>
                        period.Id == report.HorseLinkId
                        && period.PersonId == report.PersonId
                        && period.Relation == HorseRelation.ReferringVet
                    )
            );

    /// <summary>To what a link holds its person now; null when it does not answer.</summary>
    public static Task<ShareScope?> ScopeAsync(RecordsContext records, Guid shareId, Guid personId, DateTime now) =>
        Of(records, now)
            .Where(share => share.Id == shareId && share.PersonId == personId)
            .Select(share => new ShareScope(share.Relation, share.HorseId, share.YardId, share.ReportId))
            .FirstOrDefaultAsync();

    /// <summary>Takes back the links that open this horse alone.</summary>
    public static async Task RevokeOfHorseAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        List<ShareLinkRecord> open = await session
            .Records.ShareLinks.Where(share => share.HorseId == horseId && share.RevokedAt == null)
            .ToListAsync(cancellation);
        open.ForEach(share => Revoke(session, share));
    }

    /// <summary>
    /// Takes back the links of trainers who train no horse any more in the yard for which theirs was made: a horse that comes later needs a new
    /// one. A horse that was put away has not left.
    /// </summary>
    public static async Task RevokeOutlivedAsync(RecordsSession session, Guid[] trainerIds, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        List<ShareLinkRecord> outlived = await records
            .ShareLinks.Where(share =>
                trainerIds.Contains(share.PersonId)
                && share.Relation == HorseRelation.Trainer
                && share.RevokedAt == null
                && !records.HorseLinks.Any(period =>
                    period.PersonId == share.PersonId
                    && period.Relation == HorseRelation.Trainer
                    && period.Until == null
                    && records.Horses.Any(horse => horse.Id == period.HorseId && horse.YardId == share.YardId)
                )
            )
            .ToListAsync(cancellation);
        outlived.ForEach(share => Revoke(session, share));
    }

    /// <summary>Takes a link back, and notes it in the trail.</summary>
    public static void Revoke(RecordsSession session, ShareLinkRecord share)
    {
        share.Revoke(session.Now, session.Person.Id);
        session.Note(AccessEvent.LinkRevoked, null, RecordText.Of(share.Id));
    }
}
