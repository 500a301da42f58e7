using System.Globalization;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Simulation.Cases;

namespace RehabTrack.Simulation.Studies;

/// <summary>How often the intervals of a projection hold the day on which the target is truly reached.</summary>
public static class ProjectionStudy
{
    /// <summary>Where the prior is the truth, and where half-lives are truly shorter or longer.</summary>
    public static IEnumerable<StudyRow> Run(int cases) =>
        from median in (double[])[90, 60, 130]
        from examinations in (int[])[4, 5, 6]
        from row in Rows(cases, examinations, median)
        select row;

    /// <summary>One length of course, with true links; only the cases that are projected at its last examination count.</summary>
    public static IEnumerable<StudyRow> Rows(int cases, int examinations, double medianHalfLife)
    {
        int shown = 0;
        int given50 = 0;
        int held50 = 0;
        int given90 = 0;
        int held90 = 0;
        int open = 0;
        int givenPlain = 0;
        int heldPlain = 0;
        AnalysisSettings settings = new();
        Parallel.For(
            0,
            cases,
            number =>
            {
                SimulatedLesion lesion = new((examinations * 2_000_003) + number, new ReadingHabit());
                double halfLife = lesion.HalfLife(double.PositiveInfinity, medianHalfLife);
                double floor = lesion.Floor();
                CaseCourse course = lesion.Course(examinations, day => floor + ((1 - floor) * Math.Pow(2, -day / halfLife)));
                CaseAnalysis analysis = CaseAnalyser.AnalyseLinked(
                    course,
                    SimulatedLesion.TrueLinks(course),
                    settings,
                    course.Examinations[^1].Date
                );
                if (analysis.Trend.Projection is not { } projection)
                {
                    return;
                }

                double left = ((projection.Target / lesion.TrueVolume) - floor) / (1 - floor);
                double day = left <= 0 ? double.PositiveInfinity : Math.Ceiling(-halfLife * Math.Log2(left));
                Interlocked.Increment(ref shown);
                if (projection.Lower90 is not null && projection.Upper90 is null)
                {
                    Interlocked.Increment(ref open);
                }

                Count(projection.Lower90, projection.Upper90, day, course, ref given90, ref held90);
                if (Plain(analysis, projection.Target) is { } plain)
                {
                    Interlocked.Increment(ref givenPlain);
                    if (day >= plain.Lower && day <= plain.Upper)
                    {
                        Interlocked.Increment(ref heldPlain);
                    }
                }

                Count(projection.Lower50, projection.Upper50, day, course, ref given50, ref held50);
            }
        );
        string regime = string.Create(
            CultureInfo.InvariantCulture,
            $"projection after {examinations} examinations, half-life {medianHalfLife} d"
        );
        bool agrees = medianHalfLife == 90;
        double holds90 = held90 / (double)given90;
        yield return new StudyRow(regime, "90 % interval holds the day", agrees ? Bar.AtLeast(0.86) : null, holds90, given90);
        if (agrees)
        {
            yield return new StudyRow(regime, "90 % interval holds the day", Bar.AtMost(0.93), holds90, given90);
        }

        yield return new StudyRow(regime, "90 % interval has no end", null, open / (double)shown, shown);
        yield return new StudyRow(regime, "no 90 % interval is given", null, 1 - (given90 / (double)shown), shown);
        yield return new StudyRow(regime, "50 % interval holds the day", null, held50 / (double)given50, given50);
        yield return new StudyRow(regime, "90 % of the log-linear line hold the day", null, heldPlain / (double)givenPlain, givenPlain);
    }

    private static (double Lower, double Upper)? Plain(CaseAnalysis analysis, double target)
    {
        SeriesPoint[] points = [.. analysis.Trend.Series.Where(point => point.InTrend && point.Value > 0)];
        double[] days = [.. points.Select(point => (double)(point.Date.DayNumber - points[0].Date.DayNumber))];
        return LogLinearInversion.Day(days, [.. points.Select(point => Math.Log(point.Value))], Math.Log(target), 0.9).Interval;
    }

    // A day that has passed unseen counts as the day of the last examination. Where even the begin lies beyond the last day that is
    // projected, no interval is given.
    private static void Count(DateOnly? lower, DateOnly? upper, double day, CaseCourse course, ref int given, ref int held)
    {
        if (lower is not { } begin)
        {
            return;
        }

        int first = course.Examinations[0].Date.DayNumber;
        double reached = first + Math.Max(day, course.Examinations[^1].Date.DayNumber - first);
        Interlocked.Increment(ref given);
        if (reached >= begin.DayNumber && reached <= (upper?.DayNumber ?? double.PositiveInfinity))
        {
            Interlocked.Increment(ref held);
        }
    }
}
