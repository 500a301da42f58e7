using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Repeat tracings of one subject that were put away at once: they come back together. They belong to no horse.</summary>
internal sealed class RepeatShelf(RecordsSession session, Guid? horseId) : ArchiveShelf(ArchivedKind.Repeats, nameof(PutAwayRepeats))
{
    private RepeatTracingRecord[][]? subjects;

    public override async Task<int> CountAsync(CancellationToken cancellation) => (await SubjectsAsync(cancellation)).Length;

    public override async Task<IReadOnlyList<ArchivedThing>> PageAsync(int skipped, int taken, CancellationToken cancellation) =>
        [
            .. (await SubjectsAsync(cancellation))
                .Skip(skipped)
                .Take(taken)
                .Select(rows => new ArchivedRepeats
                {
                    Id = rows[0].Id,
                    Version = rows[0].Version,
                    At = rows[0].ArchivedAt!.Value,
                    Ids = [.. rows.Select(row => row.Id)],
                    Tracings = [.. rows.Select(RepeatRows.ToTracing)],
                }),
        ];

    private async Task<RepeatTracingRecord[][]> SubjectsAsync(CancellationToken cancellation) =>
        subjects ??= [
            .. (
                await session
                    .Records.RepeatTracings.AsNoTracking()
                    .Where(row => row.ArchivedAt != null && horseId == null)
                    .OrderByDescending(row => row.ArchivedAt)
                    .ThenBy(row => row.Id)
                    .ToListAsync(cancellation)
            )
                .GroupBy(row => (row.ArchivedAt, row.Subject, row.Kind, row.Size, row.Measurer))
                .Select(group => group.ToArray()),
        ];
}
