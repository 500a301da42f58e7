using System.Diagnostics;
using System.Globalization;
using RehabTrack.Records.Sqlite.Backups;

namespace RehabTrack.Drills.Kill;

/// <summary>Kills the writing process again and again, and looks each time whether all is there that was acknowledged.</summary>
internal static class KillDrill
{
    private const int Writers = 4;
    private const int FewestWrites = 3;
    private const int MostWrites = 60;
    private const int LongestMilliseconds = 40;
    private const int AppEvery = 20;
    private const int ToldEvery = 20;
    private const double LongestStartSeconds = 2;

    /// <param name="rounds">How often it is killed.</param>
    /// <param name="seed">Of the moments.</param>
    /// <param name="isBarred">
    /// Whether the program must have answered in time after each kill: then a start that takes longer is a loss, and so is that there is no
    /// published program to start.
    /// </param>
    public static async Task<DrillRow> RunAsync(int rounds, int seed, bool isBarred)
    {
        using DrillFolder folder = new();
        string data = folder.Sub("data");
        Random random = new(seed);
        Acknowledged all = new();
        List<string> lost = [];
        List<double> databaseStarts = [];
        List<double> appStarts = [];
        // The first start of this very process is slow for its own reasons.
        await (await DrillHouse.OpenAsync(data)).DisposeAsync();
        for (int round = 0; round < rounds; round++)
        {
            Acknowledged said = await RoundAsync(data, random.Next(FewestWrites, MostWrites), random.Next(LongestMilliseconds));
            long begun = Stopwatch.GetTimestamp();
            await using DrillHouse house = await DrillHouse.OpenAsync(data);
            databaseStarts.Add(Stopwatch.GetElapsedTime(begun).TotalSeconds);
            lost.AddRange((await said.LostAsync(house, goesOn: false)).Select(what => $"round {round + 1}: {what}"));
            all.Take(said);
            if (round % AppEvery == 0 && await PublishedApp.StartAsync(data) is { } seconds)
            {
                appStarts.Add(seconds);
            }

            if ((round + 1) % ToldEvery == 0)
            {
                await Console.Error.WriteLineAsync(
                    string.Create(CultureInfo.InvariantCulture, $"{round + 1} kills, {all.Writes} acknowledged writes, {lost.Count} lost")
                );
            }
        }

        if (isBarred)
        {
            lost.AddRange(Late(appStarts));
        }

        await using (DrillHouse house = await DrillHouse.OpenAsync(data))
        {
            lost.AddRange((await all.LostAsync(house, goesOn: false)).Select(what => $"at the end: {what}"));
        }

        CheckReport check = await RecordsCheck.FolderAsync(data, null, default);
        lost.AddRange(check.Problems.Select(problem => $"verify: {problem.Code} {string.Join(' ', problem.Arguments)}"));
        return new DrillRow(
            "kill -9 while four people write",
            rounds,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{all.Writes} acknowledged writes; database ready after {Range(databaseStarts)}; program answers after {Range(appStarts)}"
            ),
            lost
        );
    }

    private static IEnumerable<string> Late(List<double> appStarts) =>
        appStarts.Count == 0
            ? ["the program was not started: publish it, or name where it is published"]
            : appStarts
                .Where(seconds => seconds > LongestStartSeconds)
                .Select(seconds =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the program answered after {seconds:0.00} s, later than {LongestStartSeconds} s"
                    )
                );

    /// <summary>Lets a worker write so often and a moment longer, and kills it.</summary>
    private static async Task<Acknowledged> RoundAsync(string data, int writes, int milliseconds)
    {
        Acknowledged said = new();
        using ChildProcess worker = ChildProcess.Again("worker", data, Writers.ToString(CultureInfo.InvariantCulture));
        Task? kill = null;
        while (await worker.LineAsync() is { } line)
        {
            said.Take(line);
            kill ??= said.Writes >= writes ? KillAsync(worker, milliseconds) : null;
        }

        await (kill ?? throw new InvalidOperationException("The worker ended by itself."));
        await worker.EndedAsync();
        return said;
    }

    private static async Task KillAsync(ChildProcess worker, int milliseconds)
    {
        await Task.Delay(milliseconds);
        worker.Kill();
    }

    private static string Range(List<double> seconds) =>
        seconds.Count == 0
            ? "(not measured: the program is not published)"
            : string.Create(CultureInfo.InvariantCulture, $"{Median(seconds):0.00} s, at most {seconds.Max():0.00} s");

    private static double Median(List<double> seconds)
    {
        double[] ordered = [.. seconds.Order()];
        return ordered[ordered.Length / 2];
    }
}
