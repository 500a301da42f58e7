using System.Diagnostics;
using System.Globalization;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Sqlite.Backups;

namespace RehabTrack.Drills.Starts;

/// <summary>Kills the start while it migrates the database of an older version, starts again, and reads everything.</summary>
internal static class KilledMigrationDrill
{
    private const string Oldest = "issue-a";

    public static async Task<DrillRow> RunAsync(int rounds, int seed)
    {
        using DrillFolder folder = new();
        Random random = new(seed);
        List<string> lost = [];
        int inTheMiddle = 0;
        double whole = await StartAsync(Laid(folder, "whole"), null) ?? throw new InvalidOperationException("The start did not end.");
        for (int round = 0; round < rounds; round++)
        {
            string data = Laid(folder, string.Create(CultureInfo.InvariantCulture, $"round-{round}"));
            CheckReport before = await RecordsCheck.FolderAsync(data, null, default);
            inTheMiddle += await StartAsync(data, random.NextDouble() * whole) is null ? 1 : 0;
            await (await DrillHouse.OpenAsync(data)).DisposeAsync();
            CheckReport after = await RecordsCheck.FolderAsync(data, null, default);
            lost.AddRange(after.Problems.Select(problem => $"round {round + 1}: {problem.Code}"));
            lost.AddRange(
                before
                    .Tables.Where(table => after.Tables.GetValueOrDefault(table.Key) < table.Value)
                    .Select(table => $"round {round + 1}: rows of {table.Key}")
            );
        }

        return new DrillRow(
            "kill -9 while an older database is migrated",
            rounds,
            string.Create(CultureInfo.InvariantCulture, $"{inTheMiddle} of them before the start had ended"),
            lost
        );
    }

    /// <summary>The process that is killed: only starts.</summary>
    public static async Task<int> ChildAsync(string data)
    {
        Console.Out.Write("starting\n");
        await (await DrillHouse.OpenAsync(data)).DisposeAsync();
        Console.Out.Write("started\n");
        return 0;
    }

    /// <summary>Starts in another process, and kills it after some seconds.</summary>
    /// <returns>Seconds the start took; null when the kill came first.</returns>
    private static async Task<double?> StartAsync(string data, double? killAfter)
    {
        using ChildProcess child = ChildProcess.Again("start", data);
        await child.LineAsync();
        long begun = Stopwatch.GetTimestamp();
        if (killAfter is { } seconds)
        {
            await Task.Delay(TimeSpan.FromSeconds(seconds));
            child.Kill();
        }

        string? started = await child.LineAsync();
        await child.EndedAsync();
        return started is null ? null : Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }

    private static string Laid(DrillFolder folder, string name)
    {
        string data = folder.Sub(name);
        Directory.CreateDirectory(data);
        File.Copy(
            RepositoryFolder.Of("tests", "RehabTrack.Records.Tests", "Databases", $"{Oldest}.db"),
            System.IO.Path.Combine(data, DataFolder.DatabaseName)
        );
        return data;
    }
}
