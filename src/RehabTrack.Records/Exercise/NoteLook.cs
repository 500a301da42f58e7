using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Notes when a person opened the page with a horse's permit, so that the practice knows whether a drop was seen.</summary>
public sealed class NoteLook(RecordsAccess access) : Command<NoteLookInput, int>(access)
{
    private protected override Right Right => Right.SeePermits;

    private protected override async Task<Outcome<int>> WriteAsync(
        RecordsSession session,
        NoteLookInput input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid[] asked = [.. input.HorseIds.Distinct()];
        IQueryable<HorseRecord> horses = records.Horses.AsNoTracking().Where(horse => asked.Contains(horse.Id) && horse.ArchivedAt == null);
        if (session.Reach == Reach.OwnHorses)
        {
            horses = HorsePeople.Own(session, horses);
        }

        Guid[] ids = await horses.Select(horse => horse.Id).ToArrayAsync(cancellation);
        Dictionary<Guid, PermitLookRecord> looks = await records
            .PermitLooks.Where(look => look.PersonId == session.Person.Id && ids.Contains(look.HorseId))
            .ToDictionaryAsync(look => look.HorseId, cancellation);
        foreach (Guid id in ids)
        {
            if (!looks.TryGetValue(id, out PermitLookRecord? look))
            {
                look = new PermitLookRecord
                {
                    Id = session.NewId(),
                    HorseId = id,
                    PersonId = session.Person.Id,
                };
                records.PermitLooks.Add(look);
            }

            look.LastAt = session.Now;
        }

        await records.SaveChangesAsync(cancellation);
        return ids.Length;
    }
}
