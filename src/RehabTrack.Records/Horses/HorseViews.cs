using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Horses;

/// <summary>Reads one horse whole.</summary>
internal static class HorseViews
{
    private static readonly Func<RecordsContext, Guid, Task<HorseRecord?>> HorseById = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) => records.Horses.AsNoTracking().FirstOrDefault(horse => horse.Id == id)
    );

    private static readonly Func<RecordsContext, Guid, Task<YardRecord?>> YardById = EF.CompileAsyncQuery(
        (RecordsContext records, Guid id) => records.Yards.AsNoTracking().FirstOrDefault(yard => yard.Id == id)
    );

    public static async Task<HorseView?> FindAsync(RecordsSession session, Guid horseId, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        bool own = session.Reach == Reach.OwnHorses;
        HorseRecord? horse = await HorseById(records, horseId);
        if (horse is null || (own && !await IsOwnAsync(session, horse, cancellation)))
        {
            return null;
        }

        YardRecord? yard = horse.YardId is { } yardId ? await YardById(records, yardId) : null;
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

    private static async Task<bool> IsOwnAsync(RecordsSession session, HorseRecord horse, CancellationToken cancellation) =>
        horse.ArchivedAt is null
        && await HorsePeople.Own(session, session.Records.Horses.Where(record => record.Id == horse.Id)).AnyAsync(cancellation);
}
