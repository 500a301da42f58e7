using System.Globalization;
using CsvHelper;
using RehabTrack.Benchmarks.Measuring;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>The command <c>analyse</c> on a sheet of many cases, as a process of its own, the way a user starts it.</summary>
internal sealed class Batch : IScene
{
    private const int AllCases = 100_000;
    private const int ShortCases = 1_000;
    private const int Examinations = 5;
    private const int Levels = 6;

    public string Name => "analyse";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        int cases = isShort ? ShortCases : AllCases;
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rehabtrack-bench-");
        try
        {
            string input = Path.Combine(folder.FullName, "cases.csv");
            string output = Path.Combine(folder.FullName, "cases.json");
            await using (StreamWriter writer = File.CreateText(input))
            {
                MadeCases.Write(writer, cases, Examinations, Levels);
            }

            List<Run> runs = [];
            Ratio ratio = await Ratio.MeasureAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"`analyse` of {cases:N0} cases of {Examinations} examinations with {Levels} levels"
                ),
                "reading every cell of the same file with CsvHelper",
                3,
                async () => runs.Add(await Run.OfAsync("RehabTrack.Web.dll", "analyse", input, "--out", output)),
                1,
                () =>
                {
                    ReadCells(input);
                    return Task.CompletedTask;
                },
                1,
                isCold: true
            );
            double[] seconds = [.. runs.Select(run => run.Seconds).Order()];
            yield return ratio with
            {
                Note = string.Create(
                    CultureInfo.InvariantCulture,
                    $"`analyse` of {cases:N0} cases on {Environment.ProcessorCount} cores: {seconds[seconds.Length / 2]:F0} s by the clock (from {seconds[0]:F0} to {seconds[^1]:F0}; bar for 100,000 on 2 cores: 60 s), at most {runs.Max(run => run.PeakBytes) / 1e6:F0} MB (bar: 1,000 MB)."
                ),
            };
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void ReadCells(string input)
    {
        using StreamReader reader = new(input);
        using CsvReader csv = CsvReader.Create(reader, new CsvReaderOptions { Separator = ',', HasHeader = false });
        long letters = 0;
        while (csv.Read())
        {
            letters += csv.Current.ToArray().Sum(cell => cell.Length);
        }

        if (letters == 0)
        {
            throw new InvalidOperationException("The file is empty.");
        }
    }
}
