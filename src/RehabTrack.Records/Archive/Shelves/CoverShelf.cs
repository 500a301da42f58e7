using RehabTrack.Records.Covers;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Archive.Shelves;

/// <summary>Cover whose days are not over. It belongs to no horse.</summary>
internal sealed class CoverShelf(RecordsSession session, Guid? horseId)
    : RecordShelf<CoverRecord>(ArchivedKind.Cover, nameof(WithdrawCover))
{
    private readonly RecordsContext records = session.Records;

    protected override IQueryable<CoverRecord> Records =>
        records.Covers.Where(cover => cover.ArchivedAt != null && horseId == null && cover.To >= session.Today);

    protected override async Task<IReadOnlyList<ArchivedThing>> ShowAsync(CoverRecord[] page, CancellationToken cancellation)
    {
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            page.SelectMany(cover => new Guid?[] { cover.VetId, cover.CoveringVetId }),
            cancellation
        );
        return
        [
            .. page.Select(cover => new ArchivedCover
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
}
