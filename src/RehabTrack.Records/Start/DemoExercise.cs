using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Care;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Care;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>Lives through the exercise of the demo's horses in the order in which it happened, through the same use cases.</summary>
internal sealed class DemoExercise(Func<DateOnly, TimeOnly, RecordsAccess> at, Func<string, Guid> commandOf, int shiftDays)
{
    private static readonly TimeOnly Midday = new(12, 0);
    private static readonly TimeOnly Afternoon = new(18, 0);
    private static readonly TimeOnly Night = new(20, 0);

    /// <summary>Signs, logs, reports, decides and releases, one day after the other.</summary>
    public async Task RunAsync(DemoPlan plan, IReadOnlyDictionary<string, Actor> people, CancellationToken cancellation)
    {
        Actor vet = people[plan.Vet];
        Actor trainer = people[plan.Trainer];
        Guid horse = await HorseAsync(plan, vet, cancellation);
        await SignAsync(plan, vet, horse, cancellation);
        IEnumerable<(DateOnly Date, TimeOnly Time, Func<DateOnly, Task> Live)> days =
        [
            .. plan.Logs.SelectMany(logs =>
                Days(logs)
                    .Select(day => (day, Afternoon, (Func<DateOnly, Task>)(date => LogAsync(logs, trainer, horse, date, cancellation))))
            ),
            .. plan.Concerns.Select(concern =>
                (concern.Date, Night, (Func<DateOnly, Task>)(date => ReportAsync(concern, trainer, horse, date, cancellation)))
            ),
            .. plan.Care.Select(care =>
                (care.From, Midday, (Func<DateOnly, Task>)(date => CareAsync(care, vet, horse, date, cancellation)))
            ),
            .. plan.Decisions.Select(decision =>
                (decision.Date, Midday, (Func<DateOnly, Task>)(date => DecideAsync(decision, vet, horse, date, cancellation)))
            ),
        ];
        foreach ((DateOnly date, _, Func<DateOnly, Task> live) in days.OrderBy(day => day.Date).ThenBy(day => day.Time))
        {
            await live(date.AddDays(shiftDays));
        }
    }

    private static IEnumerable<DateOnly> Days(DemoLogs logs)
    {
        for (DateOnly day = logs.From; day <= logs.To; day = day.AddDays(logs.EveryDays))
        {
            if (day.DayOfWeek != logs.RestDay)
            {
                yield return day;
            }
        }
    }

    private async Task<Guid> HorseAsync(DemoPlan plan, Actor vet, CancellationToken cancellation)
    {
        await using RecordsContext records = await at(plan.Signed.AddDays(shiftDays), Midday).OpenAsync(vet.PracticeId, null, cancellation);
        return await records.Horses.Where(horse => horse.Name == plan.Horse).Select(horse => horse.Id).SingleAsync(cancellation);
    }

    private async Task SignAsync(DemoPlan plan, Actor vet, Guid horse, CancellationToken cancellation)
    {
        DateOnly signed = plan.Signed.AddDays(shiftDays);
        RecordsAccess then = at(signed, Midday);
        Saved draft = (
            await new SavePlanDraft(then).ExecuteAsync(
                vet,
                new SavePlanDraftInput(
                    commandOf($"plan of {plan.Horse}"),
                    horse,
                    null,
                    new PlanVersion
                    {
                        Id = "",
                        Number = 0,
                        Title = plan.Title,
                        Steps = plan.Steps,
                        Floor = plan.Floor,
                    }
                ),
                cancellation
            )
        ).Value;
        _ = (
            await new SignPlan(then).ExecuteAsync(
                vet,
                new SignPlanInput
                {
                    CommandId = commandOf($"sign plan of {plan.Horse}"),
                    HorseId = horse,
                    Version = draft.Version,
                    SeenNumber = 0,
                    From = signed,
                    Place = PlanPlace.Start,
                    IsAdvance = true,
                    RecheckDate = plan.Recheck.AddDays(shiftDays),
                },
                cancellation
            )
        ).Value;
    }

    private async Task LogAsync(DemoLogs logs, Actor trainer, Guid horse, DateOnly date, CancellationToken cancellation) =>
        _ = (
            await new LogDay(at(date, Afternoon)).ExecuteAsync(
                trainer,
                new LogDayInput
                {
                    CommandId = commandOf($"log {horse} {date.DayNumber}"),
                    HorseId = horse,
                    Log = new DayLog
                    {
                        Date = date,
                        Done = new OutingMinutes(logs.Walk, logs.Trot, logs.Canter),
                        Heat = SignGrade.None,
                        Swelling = SignGrade.None,
                        Pain = SignGrade.None,
                        Lameness = false,
                    },
                },
                cancellation
            )
        ).Value;

    private async Task ReportAsync(DemoConcern concern, Actor trainer, Guid horse, DateOnly date, CancellationToken cancellation) =>
        _ = (
            await new ReportConcern(at(date, Night)).ExecuteAsync(
                trainer,
                new ReportConcernInput(commandOf($"concern {horse} {date.DayNumber}"), horse, concern.Words),
                cancellation
            )
        ).Value;

    private async Task CareAsync(DemoCare care, Actor vet, Guid horse, DateOnly date, CancellationToken cancellation)
    {
        RecordsAccess then = at(date, Midday);
        await using RecordsContext records = await then.OpenAsync(vet.PracticeId, null, cancellation);
        Guid first = await records
            .Cases.Where(injury => injury.HorseId == horse)
            .OrderBy(injury => injury.Id)
            .Select(injury => injury.Id)
            .FirstAsync(cancellation);
        _ = (
            await new SaveCare(then).ExecuteAsync(
                vet,
                new SaveCareInput
                {
                    CommandId = commandOf($"care {horse} {care.Kind} {date.DayNumber}"),
                    HorseId = horse,
                    Entry = new CareEntry
                    {
                        Kind = care.Kind,
                        From = date,
                        Until = care.Until?.AddDays(shiftDays),
                        CaseId = care.InCase ? RecordText.Of(first) : null,
                        LamenessAaep = care.LamenessAaep,
                        Context = care.Context,
                        Words = care.Words,
                        StandDownUntil = care.StandDownUntil?.AddDays(shiftDays),
                    },
                },
                cancellation
            )
        ).Value;
    }

    private async Task DecideAsync(DemoDecision decision, Actor vet, Guid horse, DateOnly date, CancellationToken cancellation)
    {
        RecordsAccess then = at(date, Midday);
        ExerciseView view = (await new GetExercise(then).ExecuteAsync(vet, horse, cancellation)).Value;
        Saved signed = (
            await new SignDecision(then).ExecuteAsync(
                vet,
                new SignDecisionInput
                {
                    CommandId = commandOf($"decide {horse} {date.DayNumber}"),
                    HorseId = horse,
                    SeenNumber = view.LastNumber,
                    Decision = new Decision
                    {
                        Kind = decision.Kind,
                        PlanVersionId = view.Plan!.Plan.Id,
                        From = date,
                        Place = decision.Step is { } step ? new PlanPlace(step, 0) : null,
                        RecheckDate = decision.Recheck?.AddDays(shiftDays),
                        Reason = decision.Reason,
                    },
                    Visit = new Visit(),
                    Disagreement = decision.Disagreement,
                },
                cancellation
            )
        ).Value;
        _ = (
            await new ReleaseDecision(then).ExecuteAsync(
                vet,
                new ReleaseDecisionInput(
                    commandOf($"release {horse} {date.DayNumber}"),
                    signed.Id,
                    signed.Version,
                    decision.Owner,
                    decision.Trainer,
                    WithPicture: true
                ),
                cancellation
            )
        ).Value;
    }
}
