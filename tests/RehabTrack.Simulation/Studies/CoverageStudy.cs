using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>How often the 95 % interval of the course's slope holds the true rate.</summary>
public static class CoverageStudy
{
    private const double Rate = -0.25;

    /// <summary>Two to eight examinations with the error as assumed, and with one half as large again.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        from errorFactor in (double[])[1, 1.5]
        from examinations in Enumerable.Range(2, 7)
        from row in Rows(cases, examinations, errorFactor)
        select row;

    /// <summary>One length of course, with true links.</summary>
    public static IEnumerable<StudyRow> Rows(int cases, int examinations, double errorFactor)
    {
        int held = 0;
        AnalysisSettings settings = new();
        Parallel.For(
            0,
            cases,
            number =>
            {
                SimulatedLesion lesion = new((examinations * 1_000_003) + number, new ReadingHabit { ErrorFactor = errorFactor });
                CaseCourse course = lesion.Course(examinations, day => Math.Exp(Rate * day / 60));
                CaseAnalysis analysis = CaseAnalyser.AnalyseLinked(
                    course,
                    SimulatedLesion.TrueLinks(course),
                    settings,
                    course.Examinations[^1].Date
                );
                SlopeFigures slope = analysis.Trend.Course!;
                if (slope.Lower95Log <= Rate && Rate <= slope.Upper95Log)
                {
                    Interlocked.Increment(ref held);
                }
            }
        );
        double share = held / (double)cases;
        string regime = string.Create(CultureInfo.InvariantCulture, $"true links, error × {errorFactor}");
        string what = string.Create(CultureInfo.InvariantCulture, $"95 % interval holds the rate, {examinations} examinations");
        if (errorFactor > 1)
        {
            yield return new StudyRow(regime, what, Bar.AtLeast(0.88), share, cases);
            yield break;
        }

        yield return new StudyRow(regime, what, Bar.AtLeast(0.93), share, cases);
        yield return new StudyRow(regime, what, Bar.AtMost(0.99), share, cases);
    }
}
