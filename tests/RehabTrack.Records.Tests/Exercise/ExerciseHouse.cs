using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Exercise;

/// <summary>A horse with an open case, a trainer and an owner, and what is wished of its exercise most often.</summary>
internal sealed class ExerciseHouse : IAsyncDisposable
{
    private ExerciseHouse(RecordsHouse house, Guid horse, Guid injury, Actor trainer, Actor owner)
    {
        House = house;
        Horse = horse;
        Case = injury;
        Trainer = trainer;
        Owner = owner;
    }

    public RecordsHouse House { get; }

    public Guid Horse { get; }

    public Guid Case { get; }

    public Actor Trainer { get; }

    public Actor Owner { get; }

    public static DateOnly Today { get; } = new(2026, 11, 24);

    /// <summary>Walk in hand 20 minutes, then, behind a gate, 20 with 5 of trot that grows by 5 a week to 15.</summary>
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
                    OutingsADay = 1,
                    DaysAWeek = 6,
                    Modes = WorkModes.InHand | WorkModes.Ridden,
                    Surfaces = Surfaces.FirmEven,
                    ShortestDays = 42,
                },
            ],
        };

    public static async Task<ExerciseHouse> BuildAsync()
    {
        RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor trainer = await house.PersonAsync("Oona Pell", Role.Trainer);
        Actor owner = await house.PersonAsync("Jory Fenn", Role.Owner);
        Saved horse = (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.NewGuid(),
                        Name = "Thistle Vane",
                        TrainerId = trainer.PersonId,
                        OwnerId = owner.PersonId,
                    }
                )
        ).Value;
        Saved injury = await house.CaseAsync(horse.Id);
        return new ExerciseHouse(house, horse.Id, injury.Id, trainer, owner);
    }

    /// <summary>A horse that is there already; whoever is asked to do something is the vet.</summary>
    public static ExerciseHouse In(RecordsHouse house, Guid horse, Guid injury) => new(house, horse, injury, house.Vet, house.Vet);

    public async Task<ExerciseView> ViewAsync() => (await House.Get<GetExercise>().ExecuteAsync(House.Vet, Horse)).Value;

    public async Task<YardHorse> YardAsync(Actor? who = null) =>
        Assert.Single((await House.Get<GetYard>().ExecuteAsync(who ?? Trainer, NoInput.Value)).Value);

    public async Task CloseAsync(CaseEnd end, Guid? caseId = null)
    {
        CaseView injury = (await House.Get<GetCase>().ExecuteAsync(House.Vet, caseId ?? Case)).Value;
        Outcome<ClosedCases> closed = await House
            .Get<CloseCase>()
            .ExecuteAsync(
                House.Vet,
                new CloseCaseInput
                {
                    CommandId = Guid.NewGuid(),
                    CaseId = injury.Id,
                    Version = injury.Version,
                    End = end,
                    On = Today,
                    Outcome = "Out of this practice's hands",
                }
            );
        Assert.Empty(closed.Problems);
    }

    public Task<Outcome<Saved>> DraftAsync(PlanVersion plan, Guid? version = null) =>
        House.Get<SavePlanDraft>().ExecuteAsync(House.Vet, new SavePlanDraftInput(Guid.NewGuid(), Horse, version, plan));

    public async Task<Outcome<Saved>> SignAsync(PlanVersion plan, Func<SignPlanInput, SignPlanInput>? change = null)
    {
        ExerciseView before = await ViewAsync();
        Saved draft = (await DraftAsync(plan, before.Draft?.Version)).Value;
        SignPlanInput input = new()
        {
            CommandId = Guid.NewGuid(),
            HorseId = Horse,
            Version = draft.Version,
            SeenNumber = before.LastNumber,
            From = DateOnly.FromDateTime(House.Time.GetUtcNow().UtcDateTime),
            Place = PlanPlace.Start,
            IsAdvance = true,
            RecheckDate = DateOnly.FromDateTime(House.Time.GetUtcNow().UtcDateTime).AddDays(60),
        };
        return await House.Get<SignPlan>().ExecuteAsync(House.Vet, change is null ? input : change(input));
    }

    public async Task<Outcome<Saved>> DecideAsync(
        DecisionKind kind,
        Func<SignDecisionInput, SignDecisionInput>? change = null,
        Actor? who = null
    )
    {
        ExerciseView view = await ViewAsync();
        DateOnly today = DateOnly.FromDateTime(House.Time.GetUtcNow().UtcDateTime);
        SignDecisionInput input = new()
        {
            CommandId = Guid.NewGuid(),
            HorseId = Horse,
            SeenNumber = view.LastNumber,
            Decision = new Decision
            {
                Kind = kind,
                PlanVersionId = view.Plan!.Plan.Id,
                From = today,
                RecheckDate = today.AddDays(60),
                Reason = "as seen",
            },
            Visit = new Visit(),
            Disagreement = "the horse goes well",
        };
        return await House.Get<SignDecision>().ExecuteAsync(who ?? House.Vet, change is null ? input : change(input));
    }

    /// <summary>Lets a vet stand in for the responsible one, from so many days from today to so many.</summary>
    public async Task<Saved> StandInAsync(Actor covering, int from = 0, int to = 0)
    {
        DateOnly today = DateOnly.FromDateTime(House.Time.GetUtcNow().UtcDateTime);
        return (
            await House
                .Get<SaveCover>()
                .ExecuteAsync(
                    House.Vet,
                    new SaveCoverInput(Guid.NewGuid(), House.Vet.PersonId, covering.PersonId, today.AddDays(from), today.AddDays(to))
                )
        ).Value;
    }

    public Task<Outcome<LogAnswer>> LogAsync(DayLog log, Actor? who = null) =>
        House
            .Get<LogDay>()
            .ExecuteAsync(
                who ?? Trainer,
                new LogDayInput
                {
                    CommandId = Guid.NewGuid(),
                    HorseId = Horse,
                    Log = log,
                }
            );

    public Task<Outcome<LogAnswer>> ReportAsync(Actor? who = null, string? words = "warm behind") =>
        House.Get<ReportConcern>().ExecuteAsync(who ?? Trainer, new ReportConcernInput(Guid.NewGuid(), Horse, words));

    public ValueTask DisposeAsync() => House.DisposeAsync();
}
