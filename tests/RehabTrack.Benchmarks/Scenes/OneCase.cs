using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>The whole analysis of one case of 8 examinations with 12 levels.</summary>
internal sealed class OneCase : IScene
{
    private const int Examinations = 8;
    private const int Levels = 12;

    public string Name => "one-case";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        CaseCourse course = MadeCases.Make(1, Examinations, Levels).Course;
        AnalysisSettings settings = new();
        DateOnly asOf = course.Examinations.Max(examination => examination.Date);
        double[][] levels = [.. course.Examinations.Select(one => one.Readings.Select(reading => reading.Level.Value).ToArray())];
        int rounds = isShort ? 7 : 25;
        double kept = 0;

        void Analyse() => kept += CaseAnalyser.Analyse(course, [], settings, asOf).Burdens.Count;

        void Align()
        {
            for (int next = 1; next < levels.Length; next++)
            {
                kept += PlainAlignment.Cost(levels[next - 1], levels[next]);
            }
        }

        yield return await Ratio.MeasureAsync(
            "analysis of one case, 8 examinations of 12 levels",
            "aligning its 7 neighbouring pairs by positions only",
            rounds,
            Analyse,
            10,
            Align,
            500
        );
        GC.KeepAlive(kept);
    }
}
