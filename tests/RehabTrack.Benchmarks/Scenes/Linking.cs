using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>Two examinations of 6 levels by the full model: positions, areas, common changes, probabilities, tracks.</summary>
internal sealed class Linking : IScene
{
    private const int AllPairs = 100_000;
    private const int ShortPairs = 5_000;
    private const int Levels = 6;

    public string Name => "linking";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        int pairs = isShort ? ShortPairs : AllPairs;
        int rounds = isShort ? 5 : 7;
        Examination[][] examinations =
        [
            .. Enumerable.Range(1, pairs).Select(number => MadeCases.Make(number, 2, Levels, isWhole: true).Course.Examinations.ToArray()),
        ];
        double[][][] levels = [.. examinations.Select(pair => pair.Select(MadeCases.LevelsOf).ToArray())];
        LinkingSettings settings = new();
        double kept = 0;

        void Link()
        {
            foreach (Examination[] pair in examinations)
            {
                kept += LevelLinker.Link(pair, [], settings).Tracks.Count;
            }
        }

        void Align()
        {
            foreach (double[][] pair in levels)
            {
                kept += PlainAlignment.Cost(pair[0], pair[1]);
            }
        }

        void AlignAndTrace()
        {
            foreach (double[][] pair in levels)
            {
                kept += PlainAligner.AlignOverShifts(pair[0], pair[1], settings).Cost;
            }
        }

        string what = FormattableString.Invariant($"linking {pairs:N0} pairs of 6 × 6 levels, full model with probabilities");
        yield return await Ratio.MeasureAsync(
            what,
            "the plain dynamic programme over 41 shifts on the same pairs, cost only",
            rounds,
            Link,
            1,
            Align,
            1
        );
        yield return await Ratio.MeasureAsync(
            what,
            "`PlainAligner` over the same 41 shifts, with its links",
            rounds,
            Link,
            1,
            AlignAndTrace,
            1
        );
        GC.KeepAlive(kept);
    }
}
