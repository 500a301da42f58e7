using System.Globalization;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Drills.Disk;

/// <summary>
/// Fills the disk under the records, saves, and looks what was said and what is kept; then makes room and saves the same again. Where no
/// small disk can be mounted, nothing is drilled here, and the row says so: the same is tested by SQLite's page limit.
/// </summary>
internal static class DiskFullDrill
{
    private const int MostSaves = 200;
    private const int Rows = 40;
    private const int MostSpared = 250;
    private static readonly string More = " " + new string('x', 1500);

    public static async Task<DrillRow> RunAsync(int rounds, int seed)
    {
        const string Name = "the disk is full";
        using SmallDisk? disk = SmallDisk.Mount();
        if (disk is null)
        {
            return new DrillRow(Name, 0, "not drilled: no file system may be mounted here", []);
        }

        Random random = new(seed);
        List<string> lost = [];
        SortedSet<string> codes = new(StringComparer.Ordinal);
        int number = 0;
        string data = System.IO.Path.Combine(disk.Path, "data");
        await using (DrillHouse house = await DrillHouse.OpenAsync(data))
        {
            Guid injury = await Writing.CaseAsync(house, await Writing.HorseAsync(house, "Drill"));
            Saved draft = await Writing.BeginAsync(house, injury);
            for (int round = 0; round < rounds; round++)
            {
                disk.Fill(random.Next(MostSpared));
                (draft, number, Problem? told, SaveDraftInput? wish) = await UntilFullAsync(house, draft, number);
                if (told is null || wish is null)
                {
                    lost.Add($"round {round + 1}: the full disk was not noticed");
                    continue;
                }

                codes.Add(told.Code);
                if (told.Code is not ("disk-full" or "disk-trouble") || !ProblemSentences.Has(told.Code))
                {
                    lost.Add($"round {round + 1}: told {told.Code}");
                }

                lost.AddRange((await KeptAsync(house, draft.Id, number)).Select(what => $"round {round + 1}, full: {what}"));
                disk.Fill(spared: 0);
                lost.AddRange(await BackupOnFullDiskAsync(data, System.IO.Path.Combine(disk.Path, "copies")));
                disk.Free();
                Outcome<SavedDraft> again = await house.Get<SaveDraft>().ExecuteAsync(house.Vet, wish);
                if (!again.Succeeded)
                {
                    lost.Add($"round {round + 1}: with room again, told {again.Problems[0].Code}");
                    continue;
                }

                (draft, number) = (new Saved(again.Value.Id, again.Value.Version), number + 1);
                lost.AddRange((await KeptAsync(house, draft.Id, number)).Select(what => $"round {round + 1}, freed: {what}"));
            }
        }

        CheckReport check = await RecordsCheck.FolderAsync(data, null, default);
        lost.AddRange(check.Problems.Select(problem => $"verify: {problem.Code}"));
        return new DrillRow(
            Name,
            rounds,
            string.Create(CultureInfo.InvariantCulture, $"{number} acknowledged saves; told: {string.Join(", ", codes)}"),
            lost
        );
    }

    private static async Task<(Saved Draft, int Number, Problem? Told, SaveDraftInput? Wish)> UntilFullAsync(
        DrillHouse house,
        Saved draft,
        int number
    )
    {
        for (int save = 0; save < MostSaves; save++)
        {
            SaveDraftInput wish = new()
            {
                CommandId = Guid.CreateVersion7(),
                Id = draft.Id,
                Version = draft.Version,
                Content = Writing.Content(number + 1, Rows, More),
            };
            Outcome<SavedDraft> saved = await house.Get<SaveDraft>().ExecuteAsync(house.Vet, wish);
            if (!saved.Succeeded)
            {
                return (draft, number, saved.Problems[0], wish);
            }

            (draft, number) = (new Saved(saved.Value.Id, saved.Value.Version), number + 1);
        }

        return (draft, number, null, null);
    }

    private static async Task<IEnumerable<string>> KeptAsync(DrillHouse house, Guid id, int number)
    {
        ExaminationView view = (await house.Get<GetExamination>().ExecuteAsync(house.Vet, id)).Value;
        (int? kept, string? torn) = Writing.NumberOf(view.Content, Rows);
        return torn is not null ? [$"half an examination: {torn}"]
            : (kept ?? 0) != number ? [string.Create(CultureInfo.InvariantCulture, $"acknowledged {number}, kept {kept}")]
            : [];
    }

    private static async Task<IEnumerable<string>> BackupOnFullDiskAsync(string data, string to)
    {
        Outcome<BackupCopy> made = await BackupWriter.WriteAsync(data, to, byHand: true, TimeProvider.System, default);
        string[] left = Directory.Exists(to) ? Directory.GetFiles(to, "*.zip") : [];
        return made.Succeeded || left.Length > 0 ? ["a backup was made on a full disk"]
            : made.Problems[0].Code != "backup-not-written" ? [$"the backup told {made.Problems[0].Code}"]
            : [];
    }
}
