using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>
/// Keeps a day's exercise with the permit as it was known on that day. A sign above none opens a concern and drops the permit at once. An
/// earlier day may always be filled in, because the record of what was done is worth more than its neatness; a day before the injury or
/// long ago is likely mistyped, and the answer says so.
/// </summary>
public sealed class LogDay(RecordsAccess access) : Command<LogDayInput, LogAnswer>(access)
{
    private const int MinutesOfDay = 24 * 60;

    private protected override Right Right => Right.LogExercise;

    private protected override async Task<Outcome<LogAnswer>> WriteAsync(
        RecordsSession session,
        LogDayInput input,
        CancellationToken cancellation
    )
    {
        if (await ExerciseRows.HorseAsync(session, input.HorseId, cancellation) is null)
        {
            return RecordProblems.NotFound("horse");
        }

        if (await OutsideLimits.OfLogAsync(session, input.HorseId, input.Log, cancellation) is { } tooMany)
        {
            return tooMany;
        }

        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(session.Records, [input.HorseId], cancellation);
        Checks checks = new();
        DayLog log = input.Log;
        if (log.Date > session.Today)
        {
            checks.Add(new Problem(LogFields.Date, "date-in-future", RecordText.Of(log.Date), RecordText.Of(session.Today)));
        }

        foreach (Gait gait in Enum.GetValues<Gait>())
        {
            int minutes = log.Done.Of(gait);
            if (minutes is < 0 or > MinutesOfDay)
            {
                checks.Add(new Problem(LogFields.Of(gait), minutes < 0 ? "minutes-negative" : "minutes-over-day", RecordText.Of(minutes)));
            }
        }

        if (!checks.Any && log.Done.Total > MinutesOfDay)
        {
            checks.Add(new Problem(LogFields.Of(Gait.Walk), "minutes-over-day", RecordText.Of(log.Done.Total)));
        }

        if (log.Outings < 0)
        {
            checks.Add(new Problem(LogFields.Outings, "outings-negative", RecordText.Of(log.Outings.Value)));
        }

        DateOnly?[] onsets = await ExerciseRows
            .OpenCases(session.Records)
            .Where(injury => injury.HorseId == input.HorseId)
            .Select(injury => injury.Onset)
            .ToArrayAsync(cancellation);
        if (onsets.Length == 0)
        {
            checks.Add(new Problem(LogFields.Date, "log-without-open-case"));
        }

        string? onBehalfOf = checks.Line("onBehalfOf", input.OnBehalfOf);
        LogWords words = new()
        {
            Words = checks.Text("words", input.Words.Words),
            Handler = checks.Line("handler", input.Words.Handler),
            Care = checks.Text("care", input.Words.Care),
            Permitted = PermittedOn(
                (await ExerciseRows.HistoriesAsync(session, [input.HorseId], lines, cancellation))[input.HorseId],
                log.Date
            ),
        };
        if (checks.Any)
        {
            return checks.Problems;
        }

        ExerciseEntryRecord line = ExerciseRows.Add(
            session,
            input.HorseId,
            lines[input.HorseId].Count() + 1,
            new DayLogged
            {
                Order = 0,
                RecordedOn = session.Today,
                Log = log,
            },
            onBehalfOf,
            words
        );
        if (log.HasSign)
        {
            ConcernRows.Open(session, line);
        }

        await session.Records.SaveChangesAsync(cancellation);
        return new LogAnswer(line.Id, log.HasSign, IsEarly(log.Date, session.Today, onsets));
    }

    // An injury without a known onset may be as old as the log.
    private static bool IsEarly(DateOnly date, DateOnly today, DateOnly?[] onsets) =>
        date < today.AddDays(-new PermitSettings().BackfillDays) || onsets.All(onset => date < onset);

    // What became known later must not make yesterday's work too much.
    private static Work PermittedOn(PermitHistory history, DateOnly date) =>
        PermitReader.For(new PermitHistory([.. history.Entries.Where(entry => entry.RecordedOn <= date)]), date).Work;
}
