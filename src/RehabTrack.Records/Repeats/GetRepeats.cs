using Microsoft.EntityFrameworkCore;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Repeats;

/// <summary>Reads the practice's repeat tracings.</summary>
public sealed class GetRepeats(RecordsAccess access) : UseCase<NoInput, RepeatsView>(access)
{
    private protected override Right Right => Right.SeeCases;

    private protected override async Task<Outcome<RepeatsView>> RunAsync(
        RecordsSession session,
        NoInput input,
        CancellationToken cancellation
    )
    {
        List<RepeatTracingRecord> entered = await RepeatRows.EnteredAsync(session.Records, cancellation);
        Dictionary<Guid, string> names = await session.Records.People.ToDictionaryAsync(
            person => person.Id,
            person => person.Name,
            cancellation
        );
        return new RepeatsView(
            PracticeViews.Of(session),
            [
                .. entered.Select(record => new RepeatView(
                    record.Id,
                    record.Version,
                    RepeatRows.ToTracing(record),
                    names.GetValueOrDefault(record.EnteredById, ""),
                    record.EnteredAt
                )),
            ],
            await RepeatRows.FromExaminationsAsync(session.Records, cancellation)
        );
    }
}
