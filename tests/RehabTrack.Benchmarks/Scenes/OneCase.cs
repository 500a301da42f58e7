using MathNet.Numerics;
using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>The whole analysis of one case: of 5 examinations with 6 levels, and of 8 with 12.</summary>
internal sealed class OneCase : IScene
{
    public string Name => "one-case";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        int rounds = isShort ? 7 : 25;
        yield return await AgainstAlignmentAsync(5, 6, rounds);
        yield return await AgainstFitAsync(5, 6, rounds);
        yield return await AgainstAlignmentAsync(8, 12, rounds);
    }

    private static async Task<Ratio> AgainstAlignmentAsync(int examinations, int levels, int rounds)
    {
        CaseCourse course = MadeCases.Make(1, examinations, levels).Course;
        double[][] tapes = [.. course.Examinations.Select(MadeCases.LevelsOf)];
        double kept = 0;

        void Align()
        {
            for (int next = 1; next < tapes.Length; next++)
            {
                kept += PlainAlignment.Cost(tapes[next - 1], tapes[next]);
            }
        }

        Ratio ratio = await Ratio.MeasureAsync(
            What(examinations, levels),
            FormattableString.Invariant($"aligning its {examinations - 1} neighbouring pairs by positions only"),
            rounds,
            Analysis(course),
            20,
            Align,
            500
        );
        GC.KeepAlive(kept);
        return ratio;
    }

    private static async Task<Ratio> AgainstFitAsync(int examinations, int levels, int rounds)
    {
        double[] days = [.. Enumerable.Range(0, examinations).Select(examination => 60.0 * examination)];
        double[] sizes = [.. days.Select(day => -0.003 * day)];
        double kept = 0;
        Ratio ratio = await Ratio.MeasureAsync(
            What(examinations, levels),
            FormattableString.Invariant($"one MathNet `Fit.Line` through {examinations} points"),
            rounds,
            Analysis(MadeCases.Make(1, examinations, levels).Course),
            20,
            () => kept += Fit.Line(days, sizes).B,
            100_000
        );
        GC.KeepAlive(kept);
        return ratio;
    }

    private static Action Analysis(CaseCourse course)
    {
        AnalysisSettings settings = new();
        DateOnly asOf = course.Examinations.Max(examination => examination.Date);
        return () => GC.KeepAlive(CaseAnalyser.Analyse(course, [], settings, asOf));
    }

    private static string What(int examinations, int levels) =>
        FormattableString.Invariant($"analysis of one case, {examinations} examinations of {levels} levels");
}
