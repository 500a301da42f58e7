using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Care;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive;

/// <summary>
/// Lists what was put away and can be brought back, of one kind, latest first, with who did it and when. Cover that is over and people who
/// were erased have nothing to come back to.
/// </summary>
public sealed class ListArchived(RecordsAccess access) : UseCase<ListArchivedInput, ArchivedPage>(access)
{
    private const int PageSize = 50;

    private static readonly string[] PuttingAway =
    [
        nameof(ArchiveHorse),
        nameof(ArchivePerson),
        nameof(ArchiveCase),
        nameof(ArchiveDraft),
        nameof(ArchiveCare),
        nameof(WithdrawCover),
        nameof(PutAwayRepeats),
    ];

    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<ArchivedPage>> RunAsync(
        RecordsSession session,
        ListArchivedInput input,
        CancellationToken cancellation
    )
    {
        Shelf shelf = new(session, input.HorseId);
        RepeatTracingRecord[][] repeats = input.IsCount && input.Kind != ArchivedKind.Repeats ? [] : await shelf.RepeatsAsync(cancellation);
        Dictionary<ArchivedKind, int> counts = [];
        foreach (ArchivedKind kind in input.IsCount ? [input.Kind] : Enum.GetValues<ArchivedKind>())
        {
            counts.Add(kind, kind == ArchivedKind.Repeats ? repeats.Length : await shelf.CountAsync(kind, cancellation));
        }

        int pages = Math.Max(1, (counts.GetValueOrDefault(input.Kind) + PageSize - 1) / PageSize);
        int page = Math.Clamp(input.Page, 1, pages);
        int skipped = (page - 1) * PageSize;
        IReadOnlyList<ArchivedThing> things = input.IsCount
            ? []
            : input.Kind switch
            {
                ArchivedKind.Horse => await HorsesAsync(session, Page(shelf.Horses), cancellation),
                ArchivedKind.Person => await PeopleAsync(Page(shelf.People), cancellation),
                ArchivedKind.Case => await CasesAsync(session, Page(shelf.Cases), cancellation),
                ArchivedKind.Draft => await DraftsAsync(session, Page(shelf.Drafts), cancellation),
                ArchivedKind.Care => await CareAsync(session, Page(shelf.Care), cancellation),
                ArchivedKind.Cover => await CoversAsync(session, Page(shelf.Covers), cancellation),
                ArchivedKind.Repeats => [.. repeats.Skip(skipped).Take(PageSize).Select(Of)],
                _ => [],
            };
        return new ArchivedPage
        {
            Things = await WithNamesAsync(session.Records, things, cancellation),
            Counts = counts,
            Page = page,
            Pages = pages,
            Horse = await session
                .Records.Horses.Where(horse => horse.Id == input.HorseId)
                .Select(horse => horse.Name)
                .FirstOrDefaultAsync(cancellation),
            TimeZone = session.Practice.TimeZone,
        };

        IQueryable<TRecord> Page<TRecord>(IQueryable<TRecord> records)
            where TRecord : KeptRecord =>
            records
                .AsNoTracking()
                .OrderByDescending(record => record.ArchivedAt)
                .ThenByDescending(record => record.Id)
                .Skip(skipped)
                .Take(PageSize);
    }

    /// <summary>Who put each away, as the trail tells.</summary>
    private static async Task<IReadOnlyList<ArchivedThing>> WithNamesAsync(
        RecordsContext records,
        IReadOnlyList<ArchivedThing> things,
        CancellationToken cancellation
    )
    {
        Guid[] ids = [.. things.Select(thing => thing.Id)];
        var lines = await records
            .Changes.AsNoTracking()
            .Where(line => ids.Contains(line.RecordId) && PuttingAway.Contains(line.UseCase))
            .OrderBy(line => line.Number)
            .Select(line => new { line.RecordId, line.PersonId })
            .ToListAsync(cancellation);
        Dictionary<Guid, Guid> last = [];
        lines.ForEach(line => last[line.RecordId] = line.PersonId);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            last.Values.Select(person => (Guid?)person),
            cancellation
        );
        return
        [
            .. things.Select(thing =>
                thing with
                {
                    By = last.TryGetValue(thing.Id, out Guid person) ? PersonNames.Name(names, person) : null,
                }
            ),
        ];
    }

    private static async Task<IReadOnlyList<ArchivedThing>> HorsesAsync(
        RecordsSession session,
        IQueryable<HorseRecord> page,
        CancellationToken cancellation
    )
    {
        HorseRecord[] horses = await page.ToArrayAsync(cancellation);
        Guid?[] yardIds = [.. horses.Select(horse => horse.YardId)];
        Dictionary<Guid, string> yards = await session
            .Records.Yards.Where(yard => yardIds.Contains(yard.Id))
            .ToDictionaryAsync(yard => yard.Id, yard => yard.Name, cancellation);
        return
        [
            .. horses.Select(horse => new ArchivedHorse
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

    private static async Task<IReadOnlyList<ArchivedThing>> PeopleAsync(IQueryable<PersonRecord> page, CancellationToken cancellation) =>
        [
            .. (await page.ToArrayAsync(cancellation)).Select(person => new ArchivedPerson
            {
                Id = person.Id,
                Version = person.Version,
                At = person.ArchivedAt!.Value,
                Name = person.Name,
                Role = person.Role,
                CanSignIn = person.CanSignIn,
            }),
        ];

    private static async Task<IReadOnlyList<ArchivedThing>> CasesAsync(
        RecordsSession session,
        IQueryable<CaseRecord> page,
        CancellationToken cancellation
    )
    {
        CaseRecord[] cases = await page.ToArrayAsync(cancellation);
        Guid[] ids = [.. cases.Select(injury => injury.Id)];
        Dictionary<Guid, HorseRecord> horses = await HorsesOfAsync(session, cases.Select(injury => injury.HorseId), cancellation);
        Dictionary<Guid, int> examinations = await session
            .Records.Examinations.Where(examination => ids.Contains(examination.CaseId) && examination.ArchivedAt == null)
            .GroupBy(examination => examination.CaseId)
            .Select(group => new { group.Key, Count = group.Count() })
            .ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        return
        [
            .. cases.Select(injury => new ArchivedCase
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

    private static async Task<IReadOnlyList<ArchivedThing>> DraftsAsync(
        RecordsSession session,
        IQueryable<ExaminationRecord> page,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        ExaminationRecord[] drafts = await page.ToArrayAsync(cancellation);
        Guid[] ids = [.. drafts.Select(draft => draft.Id)];
        Guid[] caseIds = [.. drafts.Select(draft => draft.CaseId)];
        Dictionary<Guid, CaseRecord> cases = await records
            .Cases.AsNoTracking()
            .Where(injury => caseIds.Contains(injury.Id))
            .ToDictionaryAsync(injury => injury.Id, cancellation);
        Dictionary<Guid, HorseRecord> horses = await HorsesOfAsync(session, cases.Values.Select(injury => injury.HorseId), cancellation);
        Dictionary<Guid, int> readings = await records
            .Readings.Where(reading => ids.Contains(reading.ExaminationId))
            .GroupBy(reading => reading.ExaminationId)
            .Select(group => new { group.Key, Count = group.Count() })
            .ToDictionaryAsync(group => group.Key, group => group.Count, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            drafts.Select(draft => draft.EnteredById),
            cancellation
        );
        return
        [
            .. drafts.Select(draft => new ArchivedDraft
            {
                Id = draft.Id,
                Version = draft.Version,
                At = draft.ArchivedAt!.Value,
                After = After(horses[cases[draft.CaseId].HorseId]) ?? (cases[draft.CaseId].ArchivedAt is null ? null : ArchivedKind.Case),
                Horse = horses[cases[draft.CaseId].HorseId].Name,
                Limb = cases[draft.CaseId].Limb,
                Structure = cases[draft.CaseId].Structure,
                Date = draft.Date,
                EnteredBy = PersonNames.Name(names, draft.EnteredById),
                Readings = readings.GetValueOrDefault(draft.Id),
            }),
        ];
    }

    private static async Task<IReadOnlyList<ArchivedThing>> CareAsync(
        RecordsSession session,
        IQueryable<CareRecord> page,
        CancellationToken cancellation
    )
    {
        CareRecord[] care = await page.ToArrayAsync(cancellation);
        Dictionary<Guid, HorseRecord> horses = await HorsesOfAsync(session, care.Select(row => row.HorseId), cancellation);
        return
        [
            .. care.Select(row => new ArchivedCare
            {
                Id = row.Id,
                Version = row.Version,
                At = row.ArchivedAt!.Value,
                After = After(horses[row.HorseId]),
                HorseId = row.HorseId,
                Horse = horses[row.HorseId].Name,
                Entry = CareRows.Read(row),
                Reason = row.ArchivedReason,
            }),
        ];
    }

    private static async Task<IReadOnlyList<ArchivedThing>> CoversAsync(
        RecordsSession session,
        IQueryable<CoverRecord> page,
        CancellationToken cancellation
    )
    {
        CoverRecord[] covers = await page.ToArrayAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            session.Records,
            covers.SelectMany(cover => new Guid?[] { cover.VetId, cover.CoveringVetId }),
            cancellation
        );
        return
        [
            .. covers.Select(cover => new ArchivedCover
            {
                Id = cover.Id,
                Version = cover.Version,
                At = cover.ArchivedAt!.Value,
                Vet = PersonNames.Name(names, cover.VetId) ?? "",
                CoveringVet = PersonNames.Name(names, cover.CoveringVetId) ?? "",
                From = cover.From,
                To = cover.To,
            }),
        ];
    }

    private static ArchivedRepeats Of(RepeatTracingRecord[] rows) =>
        new()
        {
            Id = rows[0].Id,
            Version = rows[0].Version,
            At = rows[0].ArchivedAt!.Value,
            Ids = [.. rows.Select(row => row.Id)],
            Tracings = [.. rows.Select(RepeatRows.ToTracing)],
        };

    private static Task<Dictionary<Guid, HorseRecord>> HorsesOfAsync(
        RecordsSession session,
        IEnumerable<Guid> ids,
        CancellationToken cancellation
    )
    {
        Guid[] wanted = [.. ids.Distinct()];
        return session
            .Records.Horses.AsNoTracking()
            .Where(horse => wanted.Contains(horse.Id))
            .ToDictionaryAsync(horse => horse.Id, cancellation);
    }

    private static ArchivedKind? After(HorseRecord horse) => horse.ArchivedAt is null ? null : ArchivedKind.Horse;

    /// <summary>All that was put away, by kind.</summary>
    private sealed class Shelf(RecordsSession session, Guid? horseId)
    {
        private readonly RecordsContext records = session.Records;

        public IQueryable<HorseRecord> Horses =>
            records.Horses.Where(horse => horse.ArchivedAt != null && (horseId == null || horse.Id == horseId));

        public IQueryable<PersonRecord> People =>
            ErasedPeople.Without(records, records.People.Where(person => person.ArchivedAt != null && horseId == null));

        public IQueryable<CaseRecord> Cases =>
            records.Cases.Where(injury => injury.ArchivedAt != null && (horseId == null || injury.HorseId == horseId));

        public IQueryable<ExaminationRecord> Drafts =>
            (
                horseId is { } horse
                    ? from injury in records.Cases
                    join examination in records.Examinations on injury.Id equals examination.CaseId
                    where injury.HorseId == horse
                    select examination
                    : records.Examinations
            ).Where(examination => examination.ArchivedAt != null && examination.State == ExaminationState.Draft);

        public IQueryable<CareRecord> Care =>
            records.Care.Where(care => care.ArchivedAt != null && (horseId == null || care.HorseId == horseId));

        public IQueryable<CoverRecord> Covers =>
            records.Covers.Where(cover => cover.ArchivedAt != null && horseId == null && cover.To >= session.Today);

        public Task<int> CountAsync(ArchivedKind kind, CancellationToken cancellation) =>
            kind switch
            {
                ArchivedKind.Horse => Horses.CountAsync(cancellation),
                ArchivedKind.Person => People.CountAsync(cancellation),
                ArchivedKind.Case => Cases.CountAsync(cancellation),
                ArchivedKind.Draft => Drafts.CountAsync(cancellation),
                ArchivedKind.Care => Care.CountAsync(cancellation),
                ArchivedKind.Cover => Covers.CountAsync(cancellation),
                _ => Task.FromResult(0),
            };

        /// <summary>Tracings of one subject that were put away at once, latest first.</summary>
        public async Task<RepeatTracingRecord[][]> RepeatsAsync(CancellationToken cancellation) =>
            [
                .. (
                    await records
                        .RepeatTracings.AsNoTracking()
                        .Where(row => row.ArchivedAt != null && horseId == null)
                        .OrderByDescending(row => row.ArchivedAt)
                        .ThenBy(row => row.Id)
                        .ToListAsync(cancellation)
                )
                    .GroupBy(row => (row.ArchivedAt, row.Subject, row.Kind, row.Size, row.Measurer))
                    .Select(group => group.ToArray()),
            ];
    }
}
