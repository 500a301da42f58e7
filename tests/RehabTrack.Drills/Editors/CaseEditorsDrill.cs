using System.Collections.Concurrent;
using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Links;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Editors;

/// <summary>
/// Twenty vets, each a person of their own, work on one case at the same moment: all change its head, all write into one draft, all sign it,
/// all amend it, and each pins a link of their own. Everybody leaves a mark of their own; who is told that somebody was faster reads anew and
/// tries again. A mark that is missing was lost; two signatures under one draft are one too many.
/// </summary>
internal static class CaseEditorsDrill
{
    private const int Editors = 20;
    private const int MostTries = 400;

    public static async Task<DrillRow> RunAsync(int rounds)
    {
        using DrillFolder folder = new();
        await using DrillHouse house = await DrillHouse.OpenAsync(folder.Sub("data"));
        IReadOnlyList<Actor> vets = await house.VetsAsync(Editors);
        ConcurrentBag<string> lost = [];
        int conflicts = 0;
        for (int round = 0; round < rounds; round++)
        {
            Guid injury = await Writing.CaseAsync(
                house,
                await Writing.HorseAsync(house, string.Create(CultureInfo.InvariantCulture, $"Drill {round}"))
            );
            Guid earlier = await SignedAsync(house, injury, new DateOnly(2026, 2, 1));
            Saved draft = await FilledAsync(house, injury, new DateOnly(2026, 3, 1));
            await TogetherAsync(vets, vet => UntilTakenAsync(vet, () => ChangeHeadAsync(house, vet, injury)));
            await TogetherAsync(vets, vet => UntilTakenAsync(vet, () => WriteAsync(house, vet, draft.Id)));
            int signed = await SignAllAsync(house, vets, draft.Id);
            await TogetherAsync(vets, vet => UntilTakenAsync(vet, () => AmendAsync(house, vet, draft.Id)));
            await TogetherAsync(vets, vet => UntilTakenAsync(vet, () => PinAsync(house, vet, vets, injury, earlier, draft.Id)));

            CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, injury)).Value;
            ExaminationView kept = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value;
            Missing(vets, view.Diagnosis, "head");
            Missing(vets, kept.Content.Transducer, "draft");
            Missing(vets, kept.Content.Note, "amendment");
            Count("signature under one draft", 1, signed);
            Count("version", Editors + 1, kept.Versions.Count);
            Count("pinned link", Editors, view.LinkWords.Count);
        }

        return new DrillRow(
            "20 people on one case: head, draft, signature, amendment, links",
            rounds,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{rounds * ((4 * Editors) + 1)} acknowledged writes; {conflicts} times told that somebody was faster"
            ),
            [.. lost]
        );

        async Task UntilTakenAsync(Actor vet, Func<Task<IReadOnlyList<Problem>>> tryAsync)
        {
            for (int attempt = 0; attempt < MostTries; attempt++)
            {
                IReadOnlyList<Problem> problems = await tryAsync();
                if (problems.Count == 0)
                {
                    return;
                }

                if (problems.Any(problem => problem.Code != "changed-meanwhile"))
                {
                    lost.Add($"{vet.Name}: {problems[0].Code}");
                    return;
                }

                Interlocked.Increment(ref conflicts);
            }

            lost.Add($"{vet.Name}: never taken");
        }

        void Missing(IEnumerable<Actor> all, string? text, string where)
        {
            string[] marks = (text ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
            foreach (Actor vet in all.Where(vet => marks.Count(mark => mark == MarkOf(vet)) != 1))
            {
                lost.Add($"{where}: the mark of {vet.Name} in \"{text}\"");
            }
        }

        void Count(string what, int expected, int found)
        {
            if (expected != found)
            {
                lost.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {found} of {expected}"));
            }
        }
    }

    private static string MarkOf(Actor vet) => vet.Name.Replace("Vet ", "v", StringComparison.Ordinal);

    private static string With(string? text, Actor vet) => text is null ? MarkOf(vet) : $"{text} {MarkOf(vet)}";

    /// <summary>All at once: nobody begins before the last is ready.</summary>
    private static Task TogetherAsync(IReadOnlyList<Actor> vets, Func<Actor, Task> workAsync)
    {
        TaskCompletionSource go = new(TaskCreationOptions.RunContinuationsAsynchronously);
        Task[] all =
        [
            .. vets.Select(vet =>
                Task.Run(async () =>
                {
                    await go.Task;
                    await workAsync(vet);
                })
            ),
        ];
        go.SetResult();
        return Task.WhenAll(all);
    }

    private static async Task<Saved> FilledAsync(DrillHouse house, Guid injury, DateOnly date)
    {
        Saved begun = await Writing.BeginAsync(house, injury);
        SavedDraft saved = (
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    house.Vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Id = begun.Id,
                        Version = begun.Version,
                        Content = Writing.Content(0, Editors) with { Date = date, Note = null },
                    }
                )
        ).Value;
        return new Saved(saved.Id, saved.Version);
    }

    private static async Task<Guid> SignedAsync(DrillHouse house, Guid injury, DateOnly date)
    {
        Saved draft = await FilledAsync(house, injury, date);
        return (
            await house
                .Get<SignExamination>()
                .ExecuteAsync(house.Vet, new SignExaminationInput(Guid.CreateVersion7(), draft.Id, draft.Version))
        )
            .Value
            .Id;
    }

    private static async Task<IReadOnlyList<Problem>> ChangeHeadAsync(DrillHouse house, Actor vet, Guid injury)
    {
        CaseView view = (await house.Get<GetCase>().ExecuteAsync(vet, injury)).Value;
        return (
            await house
                .Get<ChangeCase>()
                .ExecuteAsync(
                    vet,
                    new ChangeCaseInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Id = view.Id,
                        Version = view.Version,
                        Limb = view.Course.Limb,
                        Structure = view.Course.Structure,
                        Onset = view.Course.Onset,
                        Diagnosis = With(view.Diagnosis, vet),
                        ResponsibleVetId = view.ResponsibleVetId,
                    }
                )
        ).Problems;
    }

    private static async Task<IReadOnlyList<Problem>> WriteAsync(DrillHouse house, Actor vet, Guid draft)
    {
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(vet, draft)).Value;
        return (
            await house
                .Get<SaveDraft>()
                .ExecuteAsync(
                    vet,
                    new SaveDraftInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Id = draft,
                        Version = view.Version,
                        Content = view.Content with { Transducer = With(view.Content.Transducer, vet) },
                    }
                )
        ).Problems;
    }

    /// <summary>Lets all sign; how many could.</summary>
    private static async Task<int> SignAllAsync(DrillHouse house, IReadOnlyList<Actor> vets, Guid draft)
    {
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft)).Value;
        int signed = 0;
        await TogetherAsync(
            vets,
            async vet =>
            {
                Outcome<Saved> outcome = await house
                    .Get<SignExamination>()
                    .ExecuteAsync(vet, new SignExaminationInput(Guid.CreateVersion7(), draft, view.Version));
                Interlocked.Add(ref signed, outcome.Succeeded ? 1 : 0);
            }
        );
        return signed;
    }

    private static async Task<IReadOnlyList<Problem>> AmendAsync(DrillHouse house, Actor vet, Guid examination)
    {
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(vet, examination)).Value;
        return (
            await house
                .Get<AmendExamination>()
                .ExecuteAsync(
                    vet,
                    new AmendExaminationInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        Id = examination,
                        Version = view.Version,
                        Reason = "drill",
                        Content = view.Content with { Note = With(view.Content.Note, vet) },
                    }
                )
        ).Problems;
    }

    // Each pins another level, so that no pin stands against another.
    private static async Task<IReadOnlyList<Problem>> PinAsync(
        DrillHouse house,
        Actor vet,
        IReadOnlyList<Actor> vets,
        Guid injury,
        Guid earlier,
        Guid later
    )
    {
        Centimetres level = new(Writing.LevelOf(vets.Index().First(one => one.Item == vet).Index));
        return (
            await house
                .Get<PinLink>()
                .ExecuteAsync(
                    vet,
                    new LinkWordInput
                    {
                        CommandId = Guid.CreateVersion7(),
                        CaseId = injury,
                        First = new PlaceKey(earlier.ToString("D"), LinkPath.Axial, level),
                        Second = new PlaceKey(later.ToString("D"), LinkPath.Axial, level),
                        Reason = "drill",
                    }
                )
        ).Problems;
    }
}
