using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills;

/// <summary>What the drills write: examinations whose every row carries the same number, so that a half one shows.</summary>
internal static class Writing
{
    public const int Rows = 6;

    public static async Task<Guid> HorseAsync(DrillHouse house, string name) => (
            await house
                .Get<SaveHorse>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveHorseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Name = name,
                        BirthDate = new DateOnly(2015, 4, 2),
                    }
                )
        ).Value.Id;

    public static async Task<Guid> CaseAsync(DrillHouse house, Guid horse) => (
            await house
                .Get<OpenCase>()
                .ExecuteAsync(
                    house.Vet,
                    new OpenCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        HorseId = horse,
                        Limb = Limb.LeftHind,
                        Structure = Structure.SuspensoryLigament,
                        Onset = new DateOnly(2026, 1, 1),
                    }
                )
        ).Value.Id;

    public static async Task<Saved> BeginAsync(DrillHouse house, Guid injury) =>
        (
            await house
                .Get<StartExamination>()
                .ExecuteAsync(
                    house.Vet,
                    new StartExaminationInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        CaseId = injury,
                        FromLast = false,
                    }
                )
        ).Value;

    /// <summary>The level of a row.</summary>
    public static double LevelOf(int row) => 8 + (row / 2.0);

    /// <summary>An examination that carries a number in its note and in every row.</summary>
    public static ExaminationContent Content(int number, int rows = Rows, string more = "")
    {
        string mark = number.ToString(CultureInfo.InvariantCulture);
        return new ExaminationContent
        {
            Date = new DateOnly(2026, 3, 1),
            Note = mark,
            Readings =
            [
                .. Enumerable
                    .Range(0, rows)
                    .Select(row => new DraftReading(
                        null,
                        new ReadingDraft
                        {
                            Part = Part.Body,
                            LevelCm = LevelOf(row),
                            LigamentAreaCm2 = 1.5,
                            LesionAreaCm2 = 0.1,
                            Note = mark + more,
                        }
                    )),
            ],
        };
    }

    /// <summary>The number an examination carries; a sentence when its parts do not agree.</summary>
    public static (int? Number, string? Torn) NumberOf(ExaminationContent content, int rows = Rows)
    {
        if (content.Note is null && content.Readings.Count == 0)
        {
            // Begun, and never saved.
            return (null, null);
        }

        string[] marks =
        [
            .. content
                .Readings.Select(row => (row.Values.Note ?? "").Split(' ')[0])
                .Append(content.Note ?? "")
                .Distinct(StringComparer.Ordinal),
        ];
        return content.Readings.Count == rows && marks.Length == 1
            ? (int.Parse(marks[0], CultureInfo.InvariantCulture), null)
            : (null, $"{content.Readings.Count} rows, marks {string.Join('/', marks)}");
    }

    /// <summary>A plan of one step that allows walking in hand.</summary>
    public static PlanVersion Plan { get; } =
        new()
        {
            Id = "",
            Number = 0,
            Title = "Drill",
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
                },
            ],
        };

    /// <summary>A photo whose every byte after its head is the same number.</summary>
    public static byte[] Photo(byte mark, int length = 4096) => [0x89, 0x50, 0x4E, 0x47, .. Enumerable.Repeat(mark, length)];

    /// <summary>A file with one case of so many examinations of three readings each.</summary>
    public static CaseFile File(string label, int examinations) =>
        new(
            label,
            new HorseIdentity(label, null, null),
            new CaseCourse
            {
                Id = label,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
                Landmark = Landmark.PointOfHock,
                Onset = new DateOnly(2025, 1, 1),
                Examinations =
                [
                    .. Enumerable
                        .Range(0, examinations)
                        .Select(visit => new DateOnly(2025, 2, 1).AddDays(visit * 14))
                        .Select(date => new Examination
                        {
                            Id = date.ToString("O", CultureInfo.InvariantCulture),
                            Date = date,
                            State = ExaminationState.History,
                            Readings =
                            [
                                .. new[] { 10.0, 12, 14 }.Select(level => new Reading
                                {
                                    Id = level.ToString(CultureInfo.InvariantCulture),
                                    Part = Part.Body,
                                    Level = new Centimetres(level),
                                    LigamentArea = new SquareCentimetres(1.5),
                                    LesionArea = LesionArea.Measured(new SquareCentimetres(0.3)),
                                }),
                            ],
                        }),
                ],
            }
        );

    /// <summary>Signs the drill's plan for a horse.</summary>
    public static async Task<Outcome<Saved>> SignPlanAsync(DrillHouse house, Guid horse)
    {
        ExerciseView view = await ExerciseAsync(house, horse);
        Saved draft = (
            await house
                .Get<SavePlanDraft>()
                .ExecuteAsync(house.Vet, new SavePlanDraftInput(Guid.CreateVersion7(), horse, view.Draft?.Version, Plan))
        ).Value;
        return await house
            .Get<SignPlan>()
            .ExecuteAsync(
                house.Vet,
                new SignPlanInput
                {
                    CommandId = Guid.CreateVersion7(),
                    HorseId = horse,
                    Version = draft.Version,
                    SeenNumber = view.LastNumber,
                    From = view.Practice.Today,
                    Place = PlanPlace.Start,
                    IsAdvance = true,
                    RecheckDate = view.Practice.Today.AddDays(60),
                }
            );
    }

    /// <summary>A decision to hold, as it is to be signed.</summary>
    public static SignDecisionInput Hold(Guid horse, ExerciseView view) =>
        new()
        {
            CommandId = Guid.CreateVersion7(),
            HorseId = horse,
            SeenNumber = view.LastNumber,
            Decision = new Decision
            {
                Kind = DecisionKind.Hold,
                PlanVersionId = view.Plan!.Plan.Id,
                From = view.Practice.Today,
                RecheckDate = view.Practice.Today.AddDays(60),
                Reason = "as seen",
            },
            Visit = new Visit(),
            Disagreement = "the horse goes well",
        };

    /// <summary>A day's log of today.</summary>
    public static LogDayInput Log(Guid horse, ExerciseView view, string? words = null) =>
        new()
        {
            CommandId = Guid.CreateVersion7(),
            HorseId = horse,
            Log = new DayLog { Date = view.Practice.Today, Done = new OutingMinutes(20) },
            Words = new LogWords { Words = words },
        };

    public static async Task<ExerciseView> ExerciseAsync(DrillHouse house, Guid horse) =>
        (await house.Get<GetExercise>().ExecuteAsync(house.Vet, horse)).Value;

    /// <summary>What of a horse's exercise history is half there; null when nothing.</summary>
    public static string? TornOf(ExerciseView view)
    {
        int decisions = view.Lines.Count(line => line.Entry is DecisionSigned);
        int concerns = view.Lines.Count(line => line.Entry is ConcernOpened or DayLogged { Log.HasSign: true });
        return view.Lines.Count != view.LastNumber ? $"{view.Lines.Count} lines up to number {view.LastNumber}"
            : view.Decisions.Count != decisions ? $"{decisions} decisions in lines, {view.Decisions.Count} beside them"
            : view.Concerns.Count != concerns ? $"{concerns} concerns in lines, {view.Concerns.Count} beside them"
            : null;
    }
}
