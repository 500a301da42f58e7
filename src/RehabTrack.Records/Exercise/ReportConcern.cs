using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Reports a concern: the permit drops at once, until a vet signs.</summary>
public sealed class ReportConcern(RecordsAccess access) : Command<ReportConcernInput, LogAnswer>(access)
{
    private protected override Right Right => Right.ReportConcerns;

    private protected override async Task<Outcome<LogAnswer>> WriteAsync(
        RecordsSession session,
        ReportConcernInput input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (await OutsideLimits.OfConcernsAsync(session, input.HorseId, cancellation) is { } tooMany)
        {
            return tooMany;
        }

        Checks checks = new();
        LogWords words = new() { Words = checks.Text("words", input.Words) };
        string? onBehalfOf = checks.Line("onBehalfOf", input.OnBehalfOf);
        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = await ExerciseRows.AppendAsync(
            session,
            input.HorseId,
            new ConcernOpened
            {
                Order = 0,
                RecordedOn = session.Today,
                Date = session.Today,
            },
            onBehalfOf,
            words,
            cancellation
        );
        ConcernRows.Open(session, line);
        await session.Records.SaveChangesAsync(cancellation);
        return new LogAnswer(line.Id, IsConcern: true);
    }
}
