using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// A lesion on six levels 2 cm apart, measured with the error of docs/methods/healing.md; its size over time is given. Seeded, so that
/// every run sees the same cases.
/// </summary>
internal sealed class SimulatedLesion(int seed, double errorFactor = 1)
{
    private static readonly double[] Profile = [0.10, 0.35, 0.60, 0.50, 0.25, 0.08];
    private readonly Random _random = new(seed);

    /// <summary>A half-life of healing: lognormal, median 90 days, log SD .35, at most <paramref name="longest"/>.</summary>
    public double HalfLife(double longest)
    {
        double days;
        do
        {
            days = 90 * Math.Exp(0.35 * Normal());
        } while (days > longest);

        return days;
    }

    /// <summary>The share of the start that stays: uniform 0 to .08.</summary>
    public double Floor() => 0.08 * _random.NextDouble();

    public double Uniform() => _random.NextDouble();

    /// <summary>Examinations every 60 days, the lesion scaled by <paramref name="size"/> of the day.</summary>
    public CaseCourse Course(int looks, Func<double, double> size)
    {
        double spread = Math.Exp(0.2 * Normal());
        double[] own = [.. Profile.Select(area => area * spread * Math.Exp(0.15 * Normal()))];
        List<Examination> examinations = [];
        for (int look = 0; look < looks; look++)
        {
            double gain = Math.Exp(errorFactor * 0.03 * Normal());
            double scale = size(60 * look);
            List<Reading> readings = [];
            for (int level = 0; level < own.Length; level++)
            {
                double lesion = own[level] * scale;
                double sd = errorFactor * Math.Sqrt((0.12 * lesion * 0.12 * lesion) + (0.02 * 0.02));
                double ligament = 1.5 * (1 + (errorFactor * 0.07 * Normal()));
                readings.Add(CourseBuilder.Row(10 + (2 * level), gain * ligament, gain * Math.Max(0, lesion + (sd * Normal()))));
            }

            examinations.Add(CourseBuilder.Exam(60 * look, readings));
        }

        return CourseBuilder.Case(examinations);
    }

    /// <summary>The trends as they were said at every look, with true links.</summary>
    public static Trend[] Looks(CaseCourse course)
    {
        LinkedCourse links = CourseBuilder.ByLevel(course);
        return
        [
            .. course.Examinations.Select(examination =>
                CaseAnalyser.AnalyseLinked(course, links, new AnalysisSettings(), examination.Date).Trend
            ),
        ];
    }

    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
