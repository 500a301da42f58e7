using RehabTrack.Records.Care;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Treatments, medicines and signs.</summary>
internal sealed class CareShelf(RecordsSession session, Guid? horseId) : RecordShelf<CareRecord>(ArchivedKind.Care, nameof(ArchiveCare))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<CareRecord> Records =>
        records.Care.Where(care => care.ArchivedAt != null && (horseId == null || care.HorseId == horseId));

    protected override async Task<IReadOnlyList<ArchivedThing>> ShowAsync(CareRecord[] page, CancellationToken cancellation)
    {
        Dictionary<Guid, HorseRecord> horses = await HorsesAsync(records, page.Select(care => care.HorseId), cancellation);
        return
        [
            .. page.Select(care => new ArchivedCare
            {
                Id = care.Id,
                Version = care.Version,
                At = care.ArchivedAt!.Value,
                After = After(horses[care.HorseId]),
                HorseId = care.HorseId,
                Horse = horses[care.HorseId].Name,
                Entry = CareRows.Read(care),
                Reason = care.ArchivedReason,
            }),
        ];
    }
}
