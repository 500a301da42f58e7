using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Schedule;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Exercise;

/// <summary>Reads the exercise of one horse whole: plan, decisions, logs, concerns, and the permit of today.</summary>
public sealed class GetExercise(RecordsAccess access) : UseCase<Guid, ExerciseView>(access)
{
    private protected override Right Right => Right.WorkOnExercise;

    private protected override async Task<Outcome<ExerciseView>> RunAsync(
        RecordsSession session,
        Guid input,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        if (await HorseViews.FindAsync(session, input, cancellation) is not { } horse)
        {
            return RecordProblems.NotFound("horse");
        }

        ILookup<Guid, ExerciseEntryRecord> lines = await ExerciseRows.LinesAsync(records, [input], cancellation);
        PermitHistory history = (await ExerciseRows.HistoriesAsync(session, [input], lines, cancellation))[input];
        DecisionRecord[] decisions =
        [
            .. ExerciseRows.Beside(
                await records.Decisions.AsNoTracking().Where(decision => decision.HorseId == input).ToListAsync(cancellation),
                decision => decision.EntryId,
                lines[input]
            ),
        ];
        ConcernRecord[] concerns =
        [
            .. ExerciseRows.Beside(
                await records
                    .Concerns.AsNoTracking()
                    .Where(concern => concern.HorseId == input)
                    .OrderByDescending(concern => concern.OpenedAt)
                    .ThenByDescending(concern => concern.Id)
                    .ToListAsync(cancellation),
                concern => concern.EntryId,
                lines[input]
            ),
        ];
        PlanDraftRecord? draft = await records
            .PlanDrafts.AsNoTracking()
            .FirstOrDefaultAsync(record => record.HorseId == input && record.ArchivedAt == null, cancellation);
        Guid[] trainers = [.. horse.People.Where(person => person.Relation == HorseRelation.Trainer).Select(person => person.PersonId)];
        DateTime? looked = await records
            .PermitLooks.Where(look => look.HorseId == input && trainers.Contains(look.PersonId))
            .MaxAsync(look => (DateTime?)look.LastAt, cancellation);
        IReadOnlyDictionary<Guid, string> names = await PersonNames.OfAsync(
            records,
            [.. lines[input].Select(line => (Guid?)line.EnteredById), .. concerns.Select(concern => concern.SeenById), draft?.WrittenById],
            cancellation
        );
        ExerciseLine[] told = [.. lines[input].Select(line => ExerciseRows.Tell(line, names))];
        Dictionary<Guid, ExerciseLine> byId = told.ToDictionary(line => line.Id);
        int signed = ExerciseRows.LastSignature(lines[input])?.Number ?? 0;
        return new ExerciseView
        {
            Horse = horse,
            Practice = PracticeViews.Of(session),
            History = history,
            Today = PermitReader.For(history, session.Today, new PermitSettings()),
            Drop = PermitReader.LastDrop(history, session.Today) is { } dropped
                ? new PermitDrop(dropped, looked > DropAt(lines[input], dropped, session.Practice.TimeZone) ? looked : null)
                : null,
            Lines = told,
            Draft = draft is null
                ? null
                : new PlanDraftView(
                    draft.Id,
                    draft.Version,
                    JsonSerializer.Deserialize<PlanVersion>(draft.ContentJson, RecordJson.Options)!,
                    PersonNames.Name(names, draft.WrittenById) ?? "",
                    draft.WrittenAt
                ),
            Decisions =
            [
                .. decisions
                    .Select(decision => new DecisionView
                    {
                        Id = decision.Id,
                        Version = decision.Version,
                        Line = byId[decision.EntryId],
                        Ground = JsonSerializer.Deserialize<DecisionGround>(decision.GroundJson, RecordJson.Options)!,
                        Disagreement = decision.Disagreement,
                        CorrectsId = decision.CorrectsId,
                        Release = decision.ReleaseJson is { } json ? ReleaseRows.Read(json) : null,
                        ReleasedAt = decision.ReleasedAt,
                    })
                    .OrderByDescending(decision => decision.Line.Number),
            ],
            SigningRefused = session.Allows(Right.DecideExercise) ? await HorseVets.RefusalAsync(session, input, cancellation) : null,
            Missed = await MissedAsync(session, input, cancellation),
            Concerns =
            [
                .. concerns.Select(concern => new ConcernView
                {
                    Id = concern.Id,
                    Version = concern.Version,
                    Line = byId[concern.EntryId],
                    OpenedAt = concern.OpenedAt,
                    SeenBy = PersonNames.Name(names, concern.SeenById),
                    SeenAt = concern.SeenAt,
                    IsAnswered = byId[concern.EntryId].Number < signed,
                    TrainerLookedAt = looked > concern.OpenedAt ? looked : null,
                }),
            ],
        };
    }

    private static async Task<IReadOnlyList<MissedRecheck>> MissedAsync(
        RecordsSession session,
        Guid horseId,
        CancellationToken cancellation
    )
    {
        RecordsContext records = session.Records;
        Guid[] cases = await ExerciseRows
            .OpenCases(records)
            .Where(injury => injury.HorseId == horseId)
            .Select(injury => injury.Id)
            .ToArrayAsync(cancellation);
        List<BookingRecord> passed = await BookingRows
            .Standing(records)
            .AsNoTracking()
            .Where(booking => cases.Contains(booking.CaseId) && booking.Date < session.Today)
            .OrderBy(booking => booking.Date)
            .ToListAsync(cancellation);
        if (passed.Count == 0)
        {
            return [];
        }

        ILookup<Guid, DateOnly> examined = (
            await records
                .Examinations.Where(examination => cases.Contains(examination.CaseId) && examination.ArchivedAt == null)
                .Select(examination => new { examination.CaseId, examination.Date })
                .ToListAsync(cancellation)
        ).ToLookup(examination => examination.CaseId, examination => examination.Date);
        ScheduleSettings settings = DueDates.Settings(session.Practice);
        return
        [
            .. passed
                .Where(booking => !BookingRows.Of(booking).WasKept(examined[booking.CaseId], settings))
                .Select(booking => new MissedRecheck(booking.CaseId, booking.Date)),
        ];
    }

    // What was written on that day brought it, the last of it at the latest; a drop that nobody wrote came with the day.
    private static DateTime DropAt(IEnumerable<ExerciseEntryRecord> lines, DateOnly dropped, string timeZone) =>
        lines
            .Where(line => line.RecordedOn == dropped && !SignatureRules.IsHarmless(line))
            .Select(line => line.RecordedAt)
            .DefaultIfEmpty(PracticeTime.InstantOf(dropped, TimeOnly.MinValue, timeZone))
            .Max();
}
