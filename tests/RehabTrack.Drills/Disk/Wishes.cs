using System.Globalization;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Disk;

/// <summary>Makes what is to be written on a full disk, on a horse with a signed plan. What must be there before is written at once.</summary>
internal sealed class Wishes(DrillHouse house, Guid horse)
{
    private const int Rows = 40;
    private const int PhotoBytes = 200_000;
    private const int Visits = 20;
    private static readonly string Long = new('x', 3500);
    private int number;

    public static async Task<Wishes> BeginAsync(DrillHouse house)
    {
        Guid horse = await Writing.HorseAsync(house, "Drill");
        await Writing.CaseAsync(house, horse);
        _ = (await Writing.SignPlanAsync(house, horse)).Value;
        return new Wishes(house, horse);
    }

    /// <summary>What makes a wish of each kind.</summary>
    public IReadOnlyList<Func<Task<Wish>>> Kinds =>
        [DraftAsync, SignatureAsync, ImportAsync, () => Task.FromResult(Photo()), DecisionAsync, LogAsync, ConcernAsync];

    private int Next() => ++number;

    // Each on a horse of its own: no two examinations of a case have one date.
    private async Task<Saved> BegunAsync() =>
        await Writing.BeginAsync(
            house,
            await Writing.CaseAsync(house, await Writing.HorseAsync(house, string.Create(CultureInfo.InvariantCulture, $"Drill {Next()}")))
        );

    private async Task<Wish> DraftAsync()
    {
        Saved begun = await BegunAsync();
        int mark = Next();
        return new Wish(
            "draft",
            Wish.Of(
                house,
                house.Get<SaveDraft>(),
                new SaveDraftInput
                {
                    CommandId = Guid.CreateVersion7(),
                    Id = begun.Id,
                    Version = begun.Version,
                    Content = Writing.Content(mark, Rows, " " + Long),
                }
            ),
            async isDone =>
            {
                ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, begun.Id)).Value;
                (int? kept, string? torn) = Writing.NumberOf(view.Content, Rows);
                return torn ?? Unlike(isDone ? mark : null, kept);
            }
        );
    }

    private async Task<Wish> SignatureAsync()
    {
        Saved begun = await BegunAsync();
        SavedDraft draft = (
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Id = begun.Id,
                        Version = begun.Version,
                        Content = Writing.Content(Next(), Rows, " " + Long),
                    }
                )
        ).Value;
        return new Wish(
            "signature",
            Wish.Of(house, house.Get<SignExamination>(), new SignExaminationInput(Guid.CreateVersion7(), draft.Id, draft.Version)),
            async isDone =>
            {
                ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
                bool isSigned = view.State == Rechecks.Exams.ExaminationState.Signed;
                return view.Versions.Count == (isSigned ? 1 : 0) ? Unlike(isDone, isSigned) : $"{view.Versions.Count} versions";
            }
        );
    }

    private async Task<Wish> ImportAsync()
    {
        string label = string.Create(CultureInfo.InvariantCulture, $"File {Next()}");
        int before = await HorsesAsync(label);
        return new Wish(
            "import",
            Wish.Of(
                house,
                house.Get<ApplyImport>(),
                new ApplyImportInput { CommandId = Guid.CreateVersion7(), Cases = [Writing.File(label, Visits)] }
            ),
            async isDone => Unlike(isDone ? before + 1 : before, await HorsesAsync(label))
        );
    }

    private Wish Photo()
    {
        byte mark = (byte)Next();
        return new Wish(
            "photo",
            Wish.Of(
                house,
                house.Get<SaveHorsePhoto>(),
                new SaveHorsePhotoInput
                {
                    CommandId = Guid.CreateVersion7(),
                    HorseId = horse,
                    ContentType = "image/png",
                    Content = Writing.Photo(mark, PhotoBytes),
                }
            ),
            async isDone =>
            {
                byte[] kept = (await house.Get<GetHorsePhoto>().ExecuteAsync(house.Vet, horse)).ValueOrDefault?.Content ?? [];
                bool isWhole = kept.Length == 0 || kept.AsSpan().SequenceEqual(Writing.Photo(kept[^1], PhotoBytes));
                return isWhole ? Unlike(isDone, kept.Length > 0 && kept[^1] == mark) : "half a photo";
            }
        );
    }

    private async Task<Wish> DecisionAsync()
    {
        ExerciseView view = await Writing.ExerciseAsync(house, horse);
        SignDecisionInput input = Writing.Hold(horse, view) with { Disagreement = Long };
        return new Wish("decision", Wish.Of(house, house.Get<SignDecision>(), input), LinesAsync(view.LastNumber));
    }

    private async Task<Wish> LogAsync()
    {
        ExerciseView view = await Writing.ExerciseAsync(house, horse);
        return new Wish("log", Wish.Of(house, house.Get<LogDay>(), Writing.Log(horse, view, Long)), LinesAsync(view.LastNumber));
    }

    private async Task<Wish> ConcernAsync()
    {
        ExerciseView view = await Writing.ExerciseAsync(house, horse);
        return new Wish(
            "concern",
            Wish.Of(house, house.Get<ReportConcern>(), new ReportConcernInput(Guid.CreateVersion7(), horse, Long, "the groom")),
            LinesAsync(view.LastNumber)
        );
    }

    private Func<bool, Task<string?>> LinesAsync(int before) =>
        async isDone =>
        {
            ExerciseView view = await Writing.ExerciseAsync(house, horse);
            return Writing.TornOf(view) ?? Unlike(isDone, view.LastNumber > before);
        };

    private async Task<int> HorsesAsync(string name) =>
        (await house.Get<FindHorses>().ExecuteAsync(house.Vet, new FindHorsesInput { Query = name })).Value.Total;

    private static string? Unlike<T>(T expected, T kept) =>
        EqualityComparer<T>.Default.Equals(expected, kept) ? null : $"expected {expected}, kept {kept}";
}
