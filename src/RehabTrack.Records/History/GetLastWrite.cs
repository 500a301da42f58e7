using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.History;

/// <summary>Reads who wrote a record last, and when; of a horse, whoever changed the people beside it counts, too.</summary>
public sealed class GetLastWrite(RecordsAccess access) : UseCase<Guid, LastWrite>(access)
{
    private protected override Right Right => Right.SeeHistory;

    private protected override async Task<Outcome<LastWrite>> RunAsync(RecordsSession session, Guid input, CancellationToken cancellation)
    {
        RecordsContext records = session.Records;
        Guid[] ids =
        [
            input,
            .. await records.HorseLinks.Where(link => link.HorseId == input).Select(link => link.Id).ToListAsync(cancellation),
        ];
        ChangeRecord? last = await records
            .Changes.AsNoTracking()
            .Where(line => ids.Contains(line.RecordId))
            .OrderByDescending(line => line.Number)
            .FirstOrDefaultAsync(cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(records, [last?.PersonId], cancellation);
        return last is not null && PersonNames.Name(names, last.PersonId) is { } name
            ? new LastWrite(name, last.At, session.Practice.TimeZone)
            : RecordProblems.NotFound("record");
    }
}
