using System.Diagnostics;
using System.Globalization;
using RehabTrack.Drills.Copies;
using RehabTrack.Drills.Disk;
using RehabTrack.Drills.Editors;
using RehabTrack.Drills.Kill;
using RehabTrack.Drills.Sheets;
using RehabTrack.Drills.Starts;

namespace RehabTrack.Drills;

/// <summary>
/// Drills what must not cost anybody a number: a pulled plug, a full disk, many editors, a backup under load,
/// broken sheets. Prints a table with what
/// was lost beside its bar; ends with 1 when anything was. <c>short</c> does a few rounds, <c>only</c> and a name one drill; a number at the end
/// seeds the moments of the kills and the breaking of the sheets.
/// </summary>
internal static class DrillsProgram
{
    private const int UsualSeed = 20261126;
    private const int ThreadsAtHand = 32;

    private static async Task<int> Main(string[] arguments)
    {
        // SQLite keeps a thread while it works: everybody who works at once needs one.
        ThreadPool.SetMinThreads(ThreadsAtHand, ThreadsAtHand);
        switch (arguments)
        {
            case ["worker", string folder, string writers]:
                return await Worker.RunAsync(folder, int.Parse(writers, CultureInfo.InvariantCulture));
            case ["start", string folder]:
                return await KilledMigrationDrill.ChildAsync(folder);
        }

        bool isShort = arguments is ["short", ..];
        string[] rest = isShort ? arguments[1..] : arguments;
        string? only = rest is ["only", string chosen, ..] ? chosen : null;
        rest = only is null ? rest : rest[2..];
        int seed = rest is [string given, ..] ? int.Parse(given, CultureInfo.InvariantCulture) : UsualSeed;
        (string Name, Func<Task<DrillRow>> RunAsync)[] drills =
        [
            ("kill", () => KillDrill.RunAsync(isShort ? 4 : 200, seed, isBarred: !isShort)),
            ("start", () => KilledMigrationDrill.RunAsync(isShort ? 1 : 50, seed)),
            ("disk", () => DiskFullDrill.RunAsync(isShort ? 1 : 20, seed)),
            ("editors", () => EditorsDrill.RunAsync(isShort ? 1 : 10)),
            ("case", () => CaseEditorsDrill.RunAsync(isShort ? 1 : 5)),
            ("backup", () => BackupDrill.RunAsync(isShort ? 1 : 20)),
            ("sheets", () => SheetDrill.RunAsync(isShort ? 150 : 20_000, seed)),
        ];
        long begun = Stopwatch.GetTimestamp();
        int lost = 0;
        Console.WriteLine("| drill | rounds | seen | lost | bar |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach ((_, Func<Task<DrillRow>> runAsync) in drills.Where(drill => only is null || drill.Name == only))
        {
            DrillRow row = await runAsync();
            Console.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"| {row.Drill} | {row.Rounds} | {row.Seen} | {row.Lost.Count} | 0 |")
            );
            foreach (string what in row.Lost)
            {
                await Console.Error.WriteLineAsync($"{row.Drill}: {what}");
            }

            lost += row.Lost.Count;
        }

        double seconds = Stopwatch.GetElapsedTime(begun).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Seed {seed}; took {seconds:0} s."));
        return lost == 0 ? 0 : 1;
    }
}
