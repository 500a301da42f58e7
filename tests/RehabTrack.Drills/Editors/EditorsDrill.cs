using System.Globalization;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Editors;

/// <summary>
/// Many people edit one draft at once: all have read the same before the first of them saves. Each adds one to a number of its own and to
/// one that all share; when told that somebody was faster, it reads anew and tries again. A lost update leaves a number that is smaller
/// than what was acknowledged.
/// </summary>
internal static class EditorsDrill
{
    private const int Editors = 20;

    public static async Task<DrillRow> RunAsync(int saves)
    {
        using DrillFolder folder = new();
        await using DrillHouse house = await DrillHouse.OpenAsync(folder.Sub("data"));
        Guid injury = await Writing.CaseAsync(house, await Writing.HorseAsync(house, "Drill"));
        Saved draft = await Writing.BeginAsync(house, injury);
        ExaminationContent empty = Writing.Content(0, Editors);
        await house.Get<SaveDraft>().ExecuteAsync(house.Vet, Wish(draft.Id, draft.Version, empty));
        Tally tally = new();
        using Barrier allHaveRead = new(Editors);
        await Task.WhenAll(
            Enumerable.Range(0, Editors).Select(editor => Task.Run(() => EditAsync(house, draft.Id, editor, saves, allHaveRead, tally)))
        );

        ExaminationContent kept = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, draft.Id)).Value.Content;
        int[] numbers = [Number(kept.Note), .. kept.Readings.Select(row => Number(row.Values.Note))];
        List<string> lost = [.. tally.Other];
        if (numbers[0] != Editors * saves)
        {
            lost.Add(string.Create(CultureInfo.InvariantCulture, $"shared number {numbers[0]} of {Editors * saves}"));
        }

        lost.AddRange(
            numbers
                .Skip(1)
                .Select((number, editor) => (number, editor))
                .Where(own => own.number != saves)
                .Select(own => string.Create(CultureInfo.InvariantCulture, $"editor {own.editor + 1}: {own.number} of {saves}"))
        );
        return new DrillRow(
            "20 editors on one draft",
            saves,
            string.Create(CultureInfo.InvariantCulture, $"{Editors * saves} acknowledged saves; {tally.Conflicts} conflicts told"),
            lost
        );
    }

    private static async Task EditAsync(DrillHouse house, Guid id, int editor, int saves, Barrier allHaveRead, Tally tally)
    {
        for (int save = 0; save < saves; save++)
        {
            ExaminationView view = await ReadAsync(house, id);
            allHaveRead.SignalAndWait();
            while (await RefusedAsync(house, id, view, editor, tally))
            {
                view = await ReadAsync(house, id);
            }
        }
    }

    private static async Task<ExaminationView> ReadAsync(DrillHouse house, Guid id) =>
        (await house.Get<GetExamination>().ExecuteAsync(house.Vet, id)).Value;

    /// <summary>Saves; whether somebody was faster, and it is to be tried again.</summary>
    private static async Task<bool> RefusedAsync(DrillHouse house, Guid id, ExaminationView view, int editor, Tally tally)
    {
        ExaminationContent edited = view.Content with
        {
            Note = Next(view.Content.Note),
            Readings =
            [
                .. view.Content.Readings.Select(
                    (row, at) => at == editor ? row with { Values = row.Values with { Note = Next(row.Values.Note) } } : row
                ),
            ],
        };
        Outcome<SavedDraft> outcome = await house.Get<SaveDraft>().ExecuteAsync(house.Vet, Wish(id, view.Version, edited));
        if (outcome.Succeeded)
        {
            return false;
        }

        if (outcome.Problems.All(problem => problem.Code == "changed-meanwhile"))
        {
            tally.Conflict();
            return true;
        }

        tally.Tell($"editor {editor + 1}: {outcome.Problems[0].Code}");
        return false;
    }

    private static SaveDraftInput Wish(Guid id, Guid version, ExaminationContent content) =>
        new()
        {
            CommandId = Guid.CreateVersion7(),
            Id = id,
            Version = version,
            Content = content,
        };

    private static string Next(string? number) => (Number(number) + 1).ToString(CultureInfo.InvariantCulture);

    private static int Number(string? text) => int.Parse(text ?? "0", CultureInfo.InvariantCulture);

    private sealed class Tally
    {
        private readonly System.Collections.Concurrent.ConcurrentBag<string> other = [];
        private int conflicts;

        public int Conflicts => conflicts;

        public IEnumerable<string> Other => other;

        public void Conflict() => Interlocked.Increment(ref conflicts);

        public void Tell(string what) => other.Add(what);
    }
}
