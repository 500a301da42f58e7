using System.Globalization;
using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Benchmarks.Scenes;

namespace RehabTrack.Benchmarks;

/// <summary>
/// Measures the program against baselines in the same run and prints the ratios as a table. <c>short</c> takes a few minutes; without
/// it every measurement takes longer. Another word runs the scenes whose name holds it.
/// </summary>
public static class BenchmarkProgram
{
    /// <summary>Entry point.</summary>
    public static async Task<int> Main(string[] args)
    {
        bool isShort = args.Contains("short", StringComparer.OrdinalIgnoreCase);
        string[] wanted = [.. args.Where(word => !word.Equals("short", StringComparison.OrdinalIgnoreCase))];
        IScene[] scenes = [new SeriesFit(), new Linking(), new OneCase(), new Batch(), new CasePage()];
        List<string> notes = [];
        Console.WriteLine("| what | against | ratio | spread |");
        Console.WriteLine("| --- | --- | --- | --- |");
        foreach (
            IScene scene in scenes.Where(scene =>
                wanted.Length == 0 || wanted.Any(word => scene.Name.Contains(word, StringComparison.OrdinalIgnoreCase))
            )
        )
        {
            await foreach (Ratio ratio in scene.MeasureAsync(isShort))
            {
                Console.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"| {ratio.What} | {ratio.Against} | {Text(ratio.Median)} | {Text(ratio.Lowest)}–{Text(ratio.Highest)} |"
                    )
                );
                notes.AddRange(ratio.Note is { } note ? [note] : []);
            }
        }

        foreach (string note in notes)
        {
            Console.WriteLine();
            Console.WriteLine(note);
        }

        return 0;
    }

    private static string Text(double ratio) => ratio.ToString(ratio < 1000 ? "G3" : "N0", CultureInfo.InvariantCulture);
}
