using System.Globalization;
using CsvHelper;
using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Web.Commands;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>The command <c>analyse</c> on a sheet of many cases.</summary>
internal sealed class Batch : IScene
{
    private const int AllCases = 10_000;
    private const int ShortCases = 1_000;
    private const int Examinations = 4;
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

            yield return await Ratio.MeasureAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"`analyse` of {cases:N0} cases of {Examinations} examinations with {Levels} levels"
                ),
                "reading every cell of the same file with CsvHelper",
                isShort ? 3 : 5,
                () => Analyse(input, output),
                1,
                () => ReadCells(input),
                1
            );
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Analyse(string input, string output)
    {
        using StringWriter messages = new(CultureInfo.InvariantCulture);
        if (AnalyseCommand.Run([input, "--out", output], messages, CancellationToken.None) != AnalyseCommand.Done)
        {
            throw new InvalidOperationException(messages.ToString());
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
