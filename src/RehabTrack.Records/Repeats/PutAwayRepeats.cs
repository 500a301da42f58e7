using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Puts repeat tracings away; they stay in the history. Yields how many.</summary>
public sealed class PutAwayRepeats(RecordsAccess access) : Command<PutAwayRepeatsInput, int>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<int>> WriteAsync(
        RecordsSession session,
        PutAwayRepeatsInput input,
        CancellationToken cancellation
    )
    {
        List<RepeatTracingRecord> rows = await session
            .Records.RepeatTracings.Where(record => input.Ids.Contains(record.Id) && record.ArchivedAt == null)
            .ToListAsync(cancellation);
        rows.ForEach(row => row.ArchivedAt = session.Now);
        await session.Records.SaveChangesAsync(cancellation);
        return rows.Count;
    }
}
