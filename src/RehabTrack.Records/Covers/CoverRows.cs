using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;

namespace RehabTrack.Records.Covers;

/// <summary>Reads cover that counts.</summary>
internal static class CoverRows
{
    /// <summary>Cover that holds on a day or later, by its first day.</summary>
    public static Task<CoverView[]> FromAsync(RecordsContext records, DateOnly day, CancellationToken cancellation) =>
        (
            from cover in records.Covers
            join vet in records.People on cover.VetId equals vet.Id
            join covering in records.People on cover.CoveringVetId equals covering.Id
            where cover.ArchivedAt == null && cover.To >= day
            orderby cover.From, cover.Id
            select new CoverView(cover.Id, cover.Version, vet.Id, vet.Name, covering.Id, covering.Name, cover.From, cover.To)
        ).ToArrayAsync(cancellation);
}
