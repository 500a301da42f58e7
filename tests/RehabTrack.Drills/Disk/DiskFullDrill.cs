using System.Globalization;
using Microsoft.Data.Sqlite;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Sqlite.Backups;
using RehabTrack.Wording;

namespace RehabTrack.Drills.Disk;

/// <summary>
/// Fills the disk under the records; draft, signature, import, photo, decision, log and concern are tried on it, each until one is refused, and
/// it is looked what was said and what is kept. Then there is room, and the same is asked again. Where no small disk can be mounted, a database
/// that may not grow stands in for it.
/// </summary>
internal static class DiskFullDrill
{
    private const int MostTries = 12;
    private const int MostSpared = 60;

    public static async Task<DrillRow> RunAsync(int rounds, int seed)
    {
        using IFullDisk disk = (IFullDisk?)SmallDisk.Mount() ?? new PageLimit();
        Random random = new(seed);
        List<string> lost = [];
        SortedSet<string> codes = new(StringComparer.Ordinal);
        SortedDictionary<string, int> refused = new(StringComparer.Ordinal);
        await using (DrillHouse house = await DrillHouse.OpenAsync(disk.Data))
        {
            Wishes wishes = await Wishes.BeginAsync(house);
            for (int round = 0; round < rounds; round++)
            {
                foreach (Func<Task<Wish>> makeAsync in wishes.Kinds)
                {
                    foreach (string wrong in await KindAsync(disk, makeAsync, random.Next(MostSpared), codes, refused))
                    {
                        lost.Add($"round {round + 1}, {wrong}");
                    }
                }

                disk.Fill(spared: 0);
                lost.AddRange(await BackupOnFullDiskAsync(disk));
                disk.Free();
            }
        }

        CheckReport check = await RecordsCheck.FolderAsync(disk.Data, null, default);
        lost.AddRange(check.Problems.Select(problem => $"verify: {problem.Code} {string.Join(' ', problem.Arguments)}"));
        return new DrillRow(
            "the disk is full",
            rounds,
            $"{disk.Kind}; refused: {string.Join(", ", refused.Select(kind => $"{kind.Key} {kind.Value}"))}; told: {string.Join(", ", codes)}",
            lost
        );
    }

    /// <summary>Tries one kind until the full disk refuses it, looks, makes room, and asks the same again.</summary>
    private static async Task<List<string>> KindAsync(
        IFullDisk disk,
        Func<Task<Wish>> makeAsync,
        int spared,
        SortedSet<string> codes,
        SortedDictionary<string, int> refused
    )
    {
        List<string> lost = [];
        Wish wish = await makeAsync();
        for (int attempt = 0; attempt < MostTries; attempt++)
        {
            ShrinkLog(disk.Data);
            disk.Fill(attempt == 0 ? spared : 0);
            IReadOnlyList<Problem> told = await wish.TryAsync();
            if (await wish.WrongAsync(told.Count == 0) is { } wrong)
            {
                lost.Add($"{wish.What} while full: {wrong}");
            }

            disk.Free();
            if (told.Count > 0)
            {
                codes.Add(told[0].Code);
                refused[wish.What] = refused.GetValueOrDefault(wish.What) + 1;
                if (told[0].Code is not ("disk-full" or "disk-trouble") || !ProblemSentences.Has(told[0].Code))
                {
                    lost.Add($"{wish.What}: told {told[0].Code}");
                }

                IReadOnlyList<Problem> again = await wish.TryAsync();
                if (again.Count > 0)
                {
                    lost.Add($"{wish.What} with room again: told {again[0].Code}");
                }
                else if (await wish.WrongAsync(true) is { } stillWrong)
                {
                    lost.Add($"{wish.What} with room again: {stillWrong}");
                }

                return lost;
            }

            wish = await makeAsync();
        }

        lost.Add(string.Create(CultureInfo.InvariantCulture, $"{wish.What}: the full disk was not noticed in {MostTries} tries"));
        return lost;
    }

    // The log keeps the blocks it once had: what is small would find room in it on the fullest disk.
    private static void ShrinkLog(string data)
    {
        using SqliteConnection connection = new(new DataFolder(data).ConnectionStringUnpooled);
        connection.Open();
        using SqliteCommand checkpoint = connection.CreateCommand();
        checkpoint.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
        checkpoint.ExecuteNonQuery();
    }

    private static async Task<IEnumerable<string>> BackupOnFullDiskAsync(IFullDisk disk)
    {
        if (disk.Copies is not { } to)
        {
            return [];
        }

        Outcome<BackupCopy> made = await BackupWriter.WriteAsync(disk.Data, to, byHand: true, TimeProvider.System, default);
        string[] left = Directory.Exists(to) ? Directory.GetFiles(to, "*.zip") : [];
        return made.Succeeded || left.Length > 0 ? ["a backup was made on a full disk"]
            : made.Problems[0].Code != "backup-not-written" ? [$"the backup told {made.Problems[0].Code}"]
            : [];
    }
}
