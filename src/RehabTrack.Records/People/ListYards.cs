using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.People;

/// <summary>Lists yards by name.</summary>
public sealed class ListYards(RecordsAccess access) : UseCase<NoInput, IReadOnlyList<YardView>>(access)
{
    private protected override Right Right => Right.SeePeople;

    private protected override async Task<Outcome<IReadOnlyList<YardView>>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    ) =>
        Outcome<IReadOnlyList<YardView>>.Of(
            await session
                .Records.Yards.Where(yard => yard.ArchivedAt == null)
                .OrderBy(yard => yard.FoldedName)
                .Select(yard => new YardView(
                    yard.Id,
                    yard.Version,
                    yard.Name,
                    yard.Phone,
                    yard.Address,
                    session.Records.Horses.Count(horse => horse.YardId == yard.Id && horse.ArchivedAt == null)
                ))
                .ToArrayAsync(cancellation),
            []
        );
}
