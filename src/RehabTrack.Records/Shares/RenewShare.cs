using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Shares;

/// <summary>
/// Gives an owner a link for a horse, or a trainer one for all the horses they train; an older one for the same answers no more. A referring
/// vet has nothing to open before there are reports.
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
        bool ofOneHorse = input.Relation == HorseRelation.Owner;
        Guid? horseId = ofOneHorse ? input.HorseId ?? Guid.Empty : null;
        HorseLinkRecord? period = await LivingShares
            .Periods(records)
            .Where(beside =>
                beside.PersonId == input.PersonId && beside.Relation == input.Relation && (horseId == null || beside.HorseId == horseId)
            )
            .OrderByDescending(beside => beside.Id)
            .FirstOrDefaultAsync(cancellation);
        if (period is null)
        {
            return RecordProblems.NotFound("person");
        }

        List<ShareLinkRecord> older = await records
            .ShareLinks.Where(share =>
                share.PersonId == input.PersonId && share.Relation == input.Relation && share.HorseId == horseId && share.RevokedAt == null
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
            HorseLinkId = ofOneHorse ? period.Id : null,
            ExpiresAt = session.Now.AddDays(new ShareSettings().ExpiryDays),
        };
        records.ShareLinks.Add(made);
        session.Note(AccessEvent.LinkMade, null, RecordText.Of(made.Id));
        await records.SaveChangesAsync(cancellation);
        return new Saved(made.Id, made.Version);
    }
}
