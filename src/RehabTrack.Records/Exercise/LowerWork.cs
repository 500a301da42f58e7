using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Lowers what is permitted on some days. Anyone may lower; in that time nothing grows, and it lifts nothing.</summary>
public sealed class LowerWork(RecordsAccess access) : Command<LowerWorkInput, Saved>(access)
{
    private protected override Right Right => Right.LogExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        LowerWorkInput input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (await OutsideLimits.OfLinesAsync(session, input.HorseId, cancellation) is { } tooMany)
        {
            return tooMany;
        }

        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(session.Records, [input.HorseId], cancellation);
        PermitHistory history = (await ExerciseRows.HistoriesAsync(session, [input.HorseId], lines, cancellation))[input.HorseId];
        Checks checks = new();
        if (input.Until < input.From)
        {
            checks.Add(new Problem("until", "until-before-from", RecordText.Of(input.Until.Value), RecordText.Of(input.From)));
        }

        if (!PlanRules.IsPossible(input.AtMost))
        {
            checks.Add(new Problem("atMost", "work-out-of-range"));
        }
        else if (PermitReader.For(history, input.From).SignedWork.IsWithin(input.AtMost))
        {
            checks.Add(new Problem("atMost", "lowers-nothing", RecordText.Of(input.From)));
        }

        LogWords words = new() { Words = checks.Words("words", input.Words) };
        string? onBehalfOf = checks.Line("onBehalfOf", input.OnBehalfOf);
        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = await ExerciseRows.AppendAsync(
            session,
            input.HorseId,
            new WorkLowered
            {
                Order = 0,
                RecordedOn = session.Today,
                AtMost = input.AtMost,
                From = input.From,
                Until = input.Until,
            },
            onBehalfOf,
            words,
            cancellation
        );
        await session.Records.SaveChangesAsync(cancellation);
        return new Saved(line.Id, line.Version);
    }
}
