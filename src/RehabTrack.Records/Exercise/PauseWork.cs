using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Says that a horse does not work or is away. Anyone may lower; after a longer time only a vet's word raises again.</summary>
public sealed class PauseWork(RecordsAccess access) : Command<PauseWorkInput, Saved>(access)
{
    private protected override Right Right => Right.LogExercise;

    private protected override async Task<Outcome<Saved>> WriteAsync(
        RecordsSession session,
        PauseWorkInput input,
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

        Checks checks = new();
        if (input.Until < input.From)
        {
            checks.Add(new Problem("until", "until-before-from", RecordText.Of(input.Until.Value), RecordText.Of(input.From)));
        }

        LogWords words = new() { Words = checks.Text("words", input.Words) };
        string? onBehalfOf = checks.Line("onBehalfOf", input.OnBehalfOf);
        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = await ExerciseRows.AppendAsync(
            session,
            input.HorseId,
            new WorkPaused
            {
                Order = 0,
                RecordedOn = session.Today,
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
