using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Cases.</summary>
internal sealed class CaseShelf(RecordsSession session, Guid? horseId) : RecordShelf<CaseRecord>(ArchivedKind.Case, nameof(ArchiveCase))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<CaseRecord> Records =>
        records.Cases.Where(injury => injury.ArchivedAt != null && (horseId == null || injury.HorseId == horseId));

    protected override async Task<IReadOnlyList<ArchivedThing>> ShowAsync(CaseRecord[] page, CancellationToken cancellation)
    {
        Guid[] ids = [.. page.Select(injury => injury.Id)];
        Dictionary<Guid, HorseRecord> horses = await HorsesAsync(records, page.Select(injury => injury.HorseId), cancellation);
        Dictionary<Guid, int> examinations = await records
            .Examinations.Where(examination => ids.Contains(examination.CaseId) && examination.ArchivedAt == null)
            .GroupBy(examination => examination.CaseId)
            .Select(group => new { group.Key, Count = group.Count() })
            .ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        return
        [
            .. page.Select(injury => new ArchivedCase
            {
                Id = injury.Id,
                Version = injury.Version,
                At = injury.ArchivedAt!.Value,
                After = After(horses[injury.HorseId]),
                Horse = horses[injury.HorseId].Name,
                Limb = injury.Limb,
                Structure = injury.Structure,
                Onset = injury.Onset,
                Examinations = examinations.GetValueOrDefault(injury.Id),
            }),
        ];
    }
}
