using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Reads who changed what of a case, latest first; the latest five hundred lines.</summary>
public sealed class GetChanges(RecordsAccess access) : UseCase<Guid, IReadOnlyList<ChangeView>>(access)
{
    private const int MostLines = 500;

    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<IReadOnlyList<ChangeView>>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (!await records.Cases.AnyAsync(injury => injury.Id == input, cancellation))
        {
            return RecordProblems.NotFound("case");
        }

        ChangeRecord[] lines = await records
            .Changes.AsNoTracking()
            .Where(change => change.CaseId == input)
            .OrderByDescending(change => change.At)
            .ThenByDescending(change => change.Id)
            .Take(MostLines)
            .ToArrayAsync(cancellation);
        return Outcome<IReadOnlyList<ChangeView>>.Of(
            await ChangeViews.OfAsync(records, lines, line => ChangeFields.Of(line.BeforeJson, line.AfterJson), cancellation),
            []
        );
    }
}
