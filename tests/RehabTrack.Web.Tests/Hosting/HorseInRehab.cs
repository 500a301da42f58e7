using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>A horse of its own with an open case, a trainer and an owner, and what happens to its exercise most often.</summary>
public sealed class HorseInRehab
{
    private readonly KeptPractice _practice;

    private HorseInRehab(KeptPractice practice, Guid id, Guid injury, Actor trainer)
    {
        _practice = practice;
        Id = id;
        Case = injury;
        Trainer = trainer;
    }

    public Guid Id { get; }

    public Guid Case { get; }

    public Actor Trainer { get; }

    public static DateOnly Today { get; } = DateOnly.FromDateTime(KeptPractice.Morning.UtcDateTime);

    /// <summary>Walk in hand 20 minutes twice a day; behind a gate 20 with 5 of trot that grows by 5 a week to 15.</summary>
    public static PlanVersion Plan { get; } =
        new()
        {
            Id = "",
            Number = 0,
            Title = "Suspensory body",
            Steps =
            [
                new PlanStep
                {
                    Name = "walk in hand",
                    Walk = new GaitRule(20),
                    Trot = new GaitRule(0),
                    Canter = new GaitRule(0),
                    Gallop = new GaitRule(0),
                    OutingsADay = 2,
                    DaysAWeek = 7,
                    Modes = WorkModes.InHand,
                    Surfaces = Surfaces.FirmEven,
                    ShortestDays = 28,
                    Gate = new Gate("sound, lesion smaller", []),
                },
                new PlanStep
                {
                    Name = "first trot",
                    Walk = new GaitRule(20),
                    Trot = new GaitRule(5, 5, 15),
                    Canter = new GaitRule(0),
                    Gallop = new GaitRule(0),
                    OutingsADay = 1,
                    DaysAWeek = 6,
                    Modes = WorkModes.InHand | WorkModes.Ridden,
                    Surfaces = Surfaces.FirmEven,
                    ShortestDays = 42,
                },
            ],
        };

    public static async Task<HorseInRehab> BuildAsync(KeptPractice practice, string name)
    {
        ArgumentNullException.ThrowIfNull(practice);
        Saved trainer = (
            await practice
                .Services.GetRequiredService<SavePerson>()
                .ExecuteAsync(
                    practice.Vet,
                    new SavePersonInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = $"Oona of {name}",
                        Role = Role.Trainer,
                        CanSignIn = true,
                    }
                )
        ).Value;
        Saved horse = (
            await practice
                .Services.GetRequiredService<SaveHorse>()
                .ExecuteAsync(
                    practice.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = name,
                        TrainerId = trainer.Id,
                    }
                )
        ).Value;
        Saved injury = (
            await practice
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    practice.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = horse.Id,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                        Onset = new DateOnly(2026, 9, 1),
                    }
                )
        ).Value;
        return new HorseInRehab(
            practice,
            horse.Id,
            injury.Id,
            new Actor(practice.Vet.PracticeId, trainer.Id, Role.Trainer, $"Oona of {name}")
        );
    }

    public async Task<ExerciseView> ViewAsync() =>
        (await _practice.Services.GetRequiredService<GetExercise>().ExecuteAsync(_practice.Vet, Id)).Value;

    public async Task<Saved> DraftAsync(PlanVersion plan) =>
        (
            await _practice
                .Services.GetRequiredService<SavePlanDraft>()
                .ExecuteAsync(_practice.Vet, new SavePlanDraftInput(Guid.NewGuid(), Id, (await ViewAsync()).Draft?.Version, plan))
        ).Value;

    /// <summary>Opens a second case, of the other hind limb.</summary>
    public async Task<Guid> CaseAsync() => (
            await _practice
                .Services.GetRequiredService<OpenCase>()
                .ExecuteAsync(
                    _practice.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.NewGuid(),
                        HorseId = Id,
                        Limb = Limb.RightHind,
                        Structure = Structure.SuspensoryLigament,
                    }
                )
        ).Value.Id;

    /// <summary>Signs a plan from today, at its start, as an advance.</summary>
    public async Task SignAsync(PlanVersion plan)
    {
        Saved draft = await DraftAsync(plan);
        Outcome<Saved> signed = await _practice
            .Services.GetRequiredService<SignPlan>()
            .ExecuteAsync(
                _practice.Vet,
                new SignPlanInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = Id,
                    Version = draft.Version,
                    SeenNumber = (await ViewAsync()).LastNumber,
                    From = Today,
                    Place = PlanPlace.Start,
                    IsAdvance = true,
                    RecheckDate = Today.AddDays(60),
                }
            );
        Assert.True(signed.Succeeded, string.Join(", ", signed.Problems));
    }

    /// <summary>Signs a decision on the plan in force, from today, asked for more work.</summary>
    /// <param name="kind">What is decided.</param>
    /// <param name="until">Until when; null where it needs no end.</param>
    /// <param name="disagreement">Why it is not what the rules suggest; null where it is.</param>
    public async Task<ExerciseView> DecideAsync(DecisionKind kind, DateOnly? until = null, string? disagreement = null)
    {
        ExerciseView view = await ViewAsync();
        Outcome<Saved> signed = await _practice
            .Services.GetRequiredService<SignDecision>()
            .ExecuteAsync(
                _practice.Vet,
                new SignDecisionInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = Id,
                    SeenNumber = view.LastNumber,
                    Decision = new Decision
                    {
                        Kind = kind,
                        ValidUntil = until,
                        PlanVersionId = view.Plan!.Plan.Id,
                        From = Today,
                        RecheckDate = Today.AddDays(60),
                        Reason = "as seen",
                    },
                    Visit = new Visit(),
                    Asked = AskedStep.More,
                    Disagreement = disagreement,
                }
            );
        Assert.True(signed.Succeeded, string.Join(", ", signed.Problems));
        return await ViewAsync();
    }

    public Task<Outcome<LogAnswer>> ConcernAsync(string words) =>
        _practice.Services.GetRequiredService<ReportConcern>().ExecuteAsync(Trainer, new ReportConcernInput(Guid.NewGuid(), Id, words));

    public async Task<YardHorse> YardAsync() =>
        Assert.Single((await _practice.Services.GetRequiredService<GetYard>().ExecuteAsync(Trainer, NoInput.Value)).Value);
}
