using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Reads one horse whole.</summary>
internal static class HorseViews
{
    public static async Task<HorseView?> FindAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        bool own = session.Reach == Reach.OwnHorses;
        IQueryable<HorseRecord> horses = records.Horses.AsNoTracking().Where(horse => horse.Id == horseId);
        if (own)
        {
            horses = HorsePeople.Own(records, horses.Where(horse => horse.ArchivedAt == null), session.Person.Id);
        }

        HorseRecord? horse = await horses.FirstOrDefaultAsync(cancellation);
        if (horse is null)
        {
            return null;
        }

        YardRecord? yard = horse.YardId is { } yardId
            ? await records.Yards.AsNoTracking().FirstOrDefaultAsync(record => record.Id == yardId, cancellation)
            : null;
        ILookup<Guid, HorsePersonView>? people = own ? null : await HorsePeople.OfHorsesAsync(records, [horseId], cancellation);
        ILookup<Guid, CaseRow>? cases = own ? null : await CaseRowQueries.OfHorsesAsync(session, [horseId], onlyOpen: false, cancellation);
        return new HorseView
        {
            Id = horse.Id,
            Version = horse.Version,
            Name = horse.Name,
            Microchip = own ? null : horse.Microchip,
            BirthYear = own ? null : horse.BirthYear,
            BirthDate = own ? null : horse.BirthDate,
            Sex = own ? null : horse.Sex,
            Use = own ? null : horse.Use,
            Markings = own ? null : horse.Markings,
            YardId = own ? null : horse.YardId,
            Yard = yard?.Name,
            YardPhone = own ? null : yard?.Phone,
            People = people is null ? [] : [.. people[horseId]],
            HasPhoto = horse.PhotoId is not null,
            Archived = horse.ArchivedAt is not null,
            Cases = cases is null ? [] : [.. cases[horseId].OrderBy(row => row.IsOpen ? 0 : 1)],
        };
    }
}
