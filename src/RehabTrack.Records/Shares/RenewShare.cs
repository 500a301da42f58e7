using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>
/// Gives an owner a link for a horse, a trainer one for all the horses they train in a yard, or a referring vet one for a report that was released
/// for them; an older one for the same answers no more.
/// </summary>
public sealed class RenewShare(RecordsAccess access) : Command<RenewShareInput, Saved>(access)
{
    private protected override Right Right => Right.ShareLinks;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        RenewShareInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await PeriodAsync(records, input, cancellation) is not { } period)
        {
            return RecordProblems.NotFound("person");
        }

        bool ofOneHorse = input.Relation != HorseRelation.Trainer;
        Guid? horseId = ofOneHorse ? period.HorseId : null;
        Guid? yardId = ofOneHorse ? null : input.YardId;
        Guid? reportId = input.Relation == HorseRelation.ReferringVet ? input.ReportId : null;
        List<ShareLinkRecord> older = await records
            .ShareLinks.Where(share =>
                share.PersonId == input.PersonId
                && share.Relation == input.Relation
                && share.HorseId == horseId
                && share.YardId == yardId
                && share.ReportId == reportId
                && share.RevokedAt == null
            )
            .ToListAsync(cancellation);
        older.ForEach(share => LivingShares.Revoke(session, share));
        ShareLinkRecord made = new()
        {
            Id = session.NewId(),
            SecretHash = SecretRecord.CheckedHash(input.SecretHash),
            MadeById = session.Person.Id,
            MadeAt = session.Now,
            PersonId = input.PersonId,
            Relation = input.Relation,
            HorseId = horseId,
            YardId = yardId,
            HorseLinkId = ofOneHorse ? period.Id : null,
            ReportId = reportId,
            ExpiresAt = session.Now.AddDays(new ShareSettings().ExpiryDays),
        };
        records.ShareLinks.Add(made);
        session.Note(AccessEvent.LinkMade, null, RecordText.Of(made.Id));
        await records.SaveChangesAsync(cancellation);
        return new Saved(made.Id, made.Version);
    }

    /// <summary>The period for which the link is made; null when the person does not stand there, or has no such report.</summary>
    private static async Task<HorseLinkRecord?> PeriodAsync(RecordsContext records, RenewShareInput input, CancellationToken cancellation)
    {
        IQueryable<HorseLinkRecord> periods = LivingShares
            .Periods(records)
            .Where(beside => beside.PersonId == input.PersonId && beside.Relation == input.Relation);
        switch (input.Relation)
        {
            case HorseRelation.Owner:
                periods = periods.Where(beside => beside.HorseId == input.HorseId);
                break;
            case HorseRelation.ReferringVet:
                periods = periods.Where(beside =>
                    LivingShares.Reports(records).Any(report => report.Id == input.ReportId && report.HorseLinkId == beside.Id)
                );
                break;
            case HorseRelation.Trainer:
                periods = periods.Where(beside => records.Horses.Any(horse => horse.Id == beside.HorseId && horse.YardId == input.YardId));
                break;
        }

        return await periods.OrderByDescending(beside => beside.Id).FirstOrDefaultAsync(cancellation);
    }
}
