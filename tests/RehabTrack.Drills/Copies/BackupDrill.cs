using System.Diagnostics;
using System.Globalization;
using RehabTrack.Drills.Kill;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite.Backups;

namespace RehabTrack.Drills.Copies;

/// <summary>
/// Backs up while another process writes, restores, and looks whether everything is there that had been acknowledged before the backup
/// began; at last, with nobody writing, whether every byte of every row is the same.
/// </summary>
internal static class BackupDrill
{
    private const int Writers = 4;

    public static async Task<DrillRow> RunAsync(int rounds)
    {
        using DrillFolder folder = new();
        string data = folder.Sub("data");
        List<string> lost = [];
        double longest = 0;
        int writes = 0;
        using (ChildProcess worker = ChildProcess.Again("worker", data, Writers.ToString(CultureInfo.InvariantCulture)))
        {
            Acknowledged said = new();
            for (int round = 0; round < rounds; round++)
            {
                Acknowledged before = await UntilAsync(worker, said, said.Writes + 40);
                long begun = Stopwatch.GetTimestamp();
                Outcome<BackupCopy> made = await BackupWriter.WriteAsync(data, folder.Sub("copies"), true, TimeProvider.System, default);
                longest = Math.Max(longest, Stopwatch.GetElapsedTime(begun).TotalSeconds);
                string restored = folder.Sub(string.Create(CultureInfo.InvariantCulture, $"restored-{round}"));
                lost.AddRange(await RestoredAsync(made, folder.Sub("copies"), restored, before));
                writes = before.Writes;
            }

            worker.Kill();
            await worker.EndedAsync();
        }

        string still = folder.Sub("still");
        lost.AddRange(
            await RestoredAsync(
                await BackupWriter.WriteAsync(data, folder.Sub("copies"), true, TimeProvider.System, default),
                folder.Sub("copies"),
                still,
                new Acknowledged()
            )
        );
        lost.AddRange(TableDigest.Differing(data, still));
        return new DrillRow(
            "backup while four people write, restored and compared",
            rounds + 1,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{writes} acknowledged writes before the last one; a backup took at most {longest:0.0} s"
            ),
            lost
        );
    }

    private static async Task<Acknowledged> UntilAsync(ChildProcess worker, Acknowledged said, int writes)
    {
        while (said.Writes < writes)
        {
            said.Take(await worker.LineAsync() ?? throw new InvalidOperationException("The worker ended by itself."));
        }

        return said.Snapshot();
    }

    private static async Task<IEnumerable<string>> RestoredAsync(
        Outcome<BackupCopy> made,
        string copies,
        string restored,
        Acknowledged before
    )
    {
        if (!made.Succeeded)
        {
            return [$"no backup: {made.Problems[0].Code}"];
        }

        string file = System.IO.Path.Combine(copies, made.Value.Name);
        Outcome<BackupManifest> done = await BackupRestore.RunAsync(file, restored, default);
        if (!done.Succeeded)
        {
            return [$"no restore: {done.Problems[0].Code}"];
        }

        CheckReport check = await RecordsCheck.FolderAsync(restored, null, default);
        await using DrillHouse house = await DrillHouse.OpenAsync(restored);
        return [.. check.Problems.Select(problem => $"verify: {problem.Code}"), .. await before.LostAsync(house, goesOn: true)];
    }
}
