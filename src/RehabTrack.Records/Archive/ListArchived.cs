using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Archive.Shelves;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive;

/// <summary>Lists what was put away and can be brought back, of one kind, latest first, with who did it and when.</summary>
public sealed class ListArchived(RecordsAccess access) : UseCase<ListArchivedInput, ArchivedPage>(access)
{
    private const int PageSize = 50;

    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<ArchivedPage>> RunAsync(
        RecordsSession session,
        ListArchivedInput input,
        CancellationToken cancellation
    )
    {
        IReadOnlyList<ArchiveShelf> shelves = ArchiveShelf.All(session, input.HorseId);
        Dictionary<ArchivedKind, int> counts = [];
        foreach (ArchiveShelf counted in shelves.Where(shelf => !input.IsCount || shelf.Kind == input.Kind))
        {
            counts.Add(counted.Kind, await counted.CountAsync(cancellation));
        }

        int pages = Math.Max(1, (counts.GetValueOrDefault(input.Kind) + PageSize - 1) / PageSize);
        int page = Math.Clamp(input.Page, 1, pages);
        return new ArchivedPage
        {
            Things = shelves.FirstOrDefault(shelf => shelf.Kind == input.Kind && !input.IsCount) is { } asked
                ? await WithNamesAsync(
                    session.Records,
                    asked,
                    await asked.PageAsync((page - 1) * PageSize, PageSize, cancellation),
                    cancellation
                )
                : [],
            Counts = counts,
            Page = page,
            Pages = pages,
            Horse = await session
                .Records.Horses.Where(horse => horse.Id == input.HorseId)
                .Select(horse => horse.Name)
                .FirstOrDefaultAsync(cancellation),
            TimeZone = session.Practice.TimeZone,
        };
    }

    /// <summary>Who put each away, as the trail tells.</summary>
    private static async Task<IReadOnlyList<ArchivedThing>> WithNamesAsync(
        RecordsContext records,
        ArchiveShelf shelf,
        IReadOnlyList<ArchivedThing> things,
        CancellationToken cancellation
    )
    {
        Guid[] ids = [.. things.Select(thing => thing.Id)];
        var lines = await records
            .Changes.AsNoTracking()
            .Where(line => ids.Contains(line.RecordId) && line.UseCase == shelf.PutAwayBy)
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
}
