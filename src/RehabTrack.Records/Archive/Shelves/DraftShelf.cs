using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Drafts of examinations.</summary>
internal sealed class DraftShelf(RecordsSession session, Guid? horseId)
    : RecordShelf<ExaminationRecord>(ArchivedKind.Draft, nameof(ArchiveDraft))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<ExaminationRecord> Records =>
        records.Examinations.Where(examination =>
            examination.ArchivedAt != null
            && examination.State == ExaminationState.Draft
            && (horseId == null || records.Cases.Any(injury => injury.Id == examination.CaseId && injury.HorseId == horseId))
        );

    protected override async Task<IReadOnlyList<ArchivedThing>> ShowAsync(ExaminationRecord[] page, CancellationToken cancellation)
    {
        Guid[] ids = [.. page.Select(draft => draft.Id)];
        Guid[] caseIds = [.. page.Select(draft => draft.CaseId)];
        Dictionary<Guid, CaseRecord> cases = await records
            .Cases.AsNoTracking()
            .Where(injury => caseIds.Contains(injury.Id))
            .ToDictionaryAsync(injury => injury.Id, cancellation);
        Dictionary<Guid, HorseRecord> horses = await HorsesAsync(records, cases.Values.Select(injury => injury.HorseId), cancellation);
        Dictionary<Guid, int> readings = await records
            .Readings.Where(reading => ids.Contains(reading.ExaminationId))
            .GroupBy(reading => reading.ExaminationId)
            .Select(group => new { group.Key, Count = group.Count() })
            .ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(records, page.Select(draft => draft.EnteredById), cancellation);
        return [.. page.Select(draft => Show(draft, cases[draft.CaseId]))];

        ArchivedDraft Show(ExaminationRecord draft, CaseRecord injury) =>
            new()
            {
                Id = draft.Id,
                Version = draft.Version,
                At = draft.ArchivedAt!.Value,
                After = After(horses[injury.HorseId]) ?? (injury.ArchivedAt is null ? null : ArchivedKind.Case),
                Horse = horses[injury.HorseId].Name,
                Limb = injury.Limb,
                Structure = injury.Structure,
                Date = draft.Date,
                EnteredBy = PersonNames.Name(names, draft.EnteredById),
                Readings = readings.GetValueOrDefault(draft.Id),
            };
    }
}
