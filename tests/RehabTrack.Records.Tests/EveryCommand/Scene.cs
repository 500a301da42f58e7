using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.Bookings;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>A practice in which every command has something to do: a horse in rehabilitation with people, plan and decision.</summary>
internal sealed class Scene : IAsyncDisposable
{
    private Scene(ExerciseHouse at)
    {
        At = at;
    }

    public ExerciseHouse At { get; }

    public RecordsHouse House => At.House;

    public Actor Vet => House.Vet;

    /// <summary>The work that the plan asks for, halved.</summary>
    public static Work Less { get; } =
        new()
        {
            Outing = new OutingMinutes(10),
            OutingsADay = 1,
            DaysAWeek = 7,
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
        };

    /// <summary>The day that was given last.</summary>
    public DateOnly LastDay { get; private set; } = ExerciseHouse.Today;

    /// <summary>A day on which nothing was lowered yet.</summary>
    public DateOnly NextDay() => LastDay = LastDay.AddDays(1);

    public static async Task<Scene> BuildAsync()
    {
        Scene scene = new(await ExerciseHouse.BuildAsync());
        Assert.True((await scene.At.SignAsync(ExerciseHouse.Plan)).Succeeded);
        return scene;
    }

    /// <summary>What a use case answers, which must be well.</summary>
    public async Task<TResult> DoneAsync<TUseCase, TInput, TResult>(TInput input)
        where TUseCase : UseCase<TInput, TResult>
    {
        Outcome<TResult> outcome = await House.Get<TUseCase>().ExecuteAsync(Vet, input);
        return outcome.Value;
    }

    public async Task<CaseView> CaseAsync(Guid? id = null) => (await House.Get<GetCase>().ExecuteAsync(Vet, id ?? At.Case)).Value;

    public async Task<PersonView> PersonAsync(string? mail = null, Role role = Role.Trainer)
    {
        Saved saved = await DoneAsync<SavePerson, SavePersonInput, Saved>(
            new SavePersonInput
            {
                CommandId = Guid.NewGuid(),
                Name = "Wren Ashby",
                Role = role,
                Mail = mail,
            }
        );
        return (await House.Get<GetPerson>().ExecuteAsync(Vet, saved.Id)).Value;
    }

    /// <summary>A vet who may sign in, beside the one who asks.</summary>
    public async Task<Guid> ColleagueAsync() => (await House.PersonAsync("Ivo Lark", Role.Vet)).PersonId;

    public async Task<Saved> BookedAsync()
    {
        Saved injury = await House.ExaminedAsync(30);
        return (await House.BookAsync(injury.Id, 5, "09:00", "yard")).Value;
    }

    public async Task<SavedDraft> DraftAsync() =>
        await House.DraftAsync((await FreshCaseAsync()).Id, Wishes.Content(ExerciseHouse.Today.AddDays(-3), (10, 0), (12, 0.5)));

    public async Task<ExaminationView> SignedAsync()
    {
        Saved signed = await House.SignedAsync(
            (await FreshCaseAsync()).Id,
            Wishes.Content(ExerciseHouse.Today.AddDays(-3), (10, 0), (12, 0.5))
        );
        return (await House.Get<GetExamination>().ExecuteAsync(Vet, signed.Id)).Value;
    }

    public async Task<Saved> FreshCaseAsync() => await House.CaseAsync((await House.HorseAsync()).Id);

    public async Task<PracticeView> PracticeAsync() => (await House.Get<GetPractice>().ExecuteAsync(Vet, NoInput.Value)).Value;

    /// <summary>Two examinations, each with a level at 12 cm.</summary>
    public async Task<(Guid Case, PlaceKey First, PlaceKey Second)> TwoPlacesAsync()
    {
        Guid injury = (await FreshCaseAsync()).Id;
        Saved first = await House.SignedAsync(injury, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5), (14, 0)));
        Saved second = await House.SignedAsync(injury, Wishes.Content(new DateOnly(2026, 8, 1), (10, 0), (12, 0.4), (14, 0)));
        return (injury, Key(first.Id), Key(second.Id));
    }

    /// <summary>Content with every text of an examination and of a row filled.</summary>
    public static ExaminationContent FullContent { get; } =
        new()
        {
            Date = ExerciseHouse.Today.AddDays(-2),
            Name = "morning",
            Examiner = "Edda Marrow",
            Transducer = "linear 12 MHz",
            Note = "calm",
            OutsidePractice = "Far Shore Equine",
            Readings =
            [
                new DraftReading(
                    null,
                    new ReadingDraft
                    {
                        Part = Part.Body,
                        LevelCm = 12,
                        LigamentAreaCm2 = 1.5,
                        LesionAreaCm2 = 0.5,
                        Lesion = "A",
                        Measurer = "Edda Marrow",
                        Note = "clear edge",
                    }
                ),
            ],
        };

    public async Task<Saved> DecisionAsync() => (await At.DecideAsync(DecisionKind.Hold)).Value;

    public async Task<Guid> ConcernAsync()
    {
        await At.ReportAsync();
        return (await House.LookAsync(records => Task.FromResult(records.Concerns.OrderByDescending(one => one.Id).First().Id)));
    }

    public ValueTask DisposeAsync() => At.DisposeAsync();

    private static PlaceKey Key(Guid examination) => new(examination.ToString("D"), LinkPath.Axial, new Centimetres(12));
}
