using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Brings repeat tracings back that were put away. Yields how many.</summary>
public sealed class BringBackRepeats(RecordsAccess access) : Command<BringBackRepeatsInput, int>(access)
{
    private protected override Right Right => Right.EnterExaminations;

    private protected override async Task<Outcome<int>> WriteAsync(
        RecordsSession session,
        BringBackRepeatsInput input,
        CancellationToken cancellation
    )
    {
        List<RepeatTracingRecord> rows = await session
            .Records.RepeatTracings.Where(record => input.Ids.Contains(record.Id) && record.ArchivedAt != null)
            .ToListAsync(cancellation);
        if (await RepeatRules.TooManyAsync(session.Records, rows.Count, cancellation) is { } tooMany)
        {
            return tooMany;
        }

        rows.ForEach(row => row.ArchivedAt = null);
        await session.Records.SaveChangesAsync(cancellation);
        return rows.Count;
    }
}
