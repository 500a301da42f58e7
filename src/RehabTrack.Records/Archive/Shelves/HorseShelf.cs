using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Horses.</summary>
internal sealed class HorseShelf(RecordsSession session, Guid? horseId) : RecordShelf<HorseRecord>(ArchivedKind.Horse, nameof(ArchiveHorse))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<HorseRecord> Records =>
        records.Horses.Where(horse => horse.ArchivedAt != null && (horseId == null || horse.Id == horseId));

    protected override async Task<IReadOnlyList<ArchivedThing>> ShowAsync(HorseRecord[] page, CancellationToken cancellation)
    {
        Guid?[] yardIds = [.. page.Select(horse => horse.YardId)];
        Dictionary<Guid, string> yards = await records
            .Yards.Where(yard => yardIds.Contains(yard.Id))
            .ToDictionaryAsync(yard => yard.Id, yard => yard.Name, cancellation);
        return
        [
            .. page.Select(horse => new ArchivedHorse
            {
                Id = horse.Id,
                Version = horse.Version,
                At = horse.ArchivedAt!.Value,
                Name = horse.Name,
                BirthYear = horse.BirthYear,
                Yard = horse.YardId is { } yard ? yards.GetValueOrDefault(yard) : null,
            }),
        ];
    }
}
