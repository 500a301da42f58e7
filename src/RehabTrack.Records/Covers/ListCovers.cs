using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Covers;

/// <summary>Lists the cover of today and of days to come.</summary>
public sealed class ListCovers(RecordsAccess access) : UseCase<NoInput, IReadOnlyList<CoverView>>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<IReadOnlyList<CoverView>>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    ) => Outcome<IReadOnlyList<CoverView>>.Of(await CoverRows.FromAsync(session.Records, session.Today, cancellation), []);
}
