using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Healing;

/// <summary>
/// The day on which a shrinking lesion reaches its target. The size is <c>S·(f + (1 − f)·2^(−t/h))</c>; half-life h, floor f and start S are
/// weighed on a fixed grid by their prior (shared/projection.json) and by how well they fit the examinations, and every triple votes for
/// its day. Deterministic.
/// </summary>
internal static class Projector
{
    private const int HalfLives = 41;
    private const double HalfLifeSpread = 3;
    private const int Floors = 9;
    private const int Starts = 7;
    private const double StartSpread = 2.4;
    private const double Log95 = 1.959963984540054;

    private static readonly ReferenceTable Table = ReferenceTable.Load("projection");
    private static readonly double MedianDays = Table["halfLifeMedianDays"];
    private static readonly double LogSd = Table["halfLifeLogSd"];
    private static readonly double LargestFloor = Table["largestFloorShare"];
    private static readonly double FurthestSpans = Table["furthestSpans"];

    /// <summary>Projects a course.</summary>
    /// <param name="points">The examinations of the trend in order of date, sizes with an acceptable rate.</param>
    /// <param name="target">The target in the unit of the values.</param>
    /// <param name="intervalDays">The usual interval of rechecks.</param>
    /// <returns>The projection; null with fewer than three sizes that can be measured, or when they lie on one day.</returns>
    public static Projection? Project(IReadOnlyList<MeasuredPoint> points, double target, int intervalDays)
    {
        MeasuredPoint[] measurable = [.. points.Where(point => !point.IsNotMeasurable && point.Value > 0)];
        if (measurable.Length < 3 || target <= 0)
        {
            return null;
        }

        DateOnly first = measurable[0].Date;
        DateOnly last = points[^1].Date;
        int span = last.DayNumber - first.DayNumber;
        int furthest = (int)(FurthestSpans * span);
        if (span == 0)
        {
            return null;
        }

        double[] byDay = Votes(measurable, Math.Log(target), furthest, out double later);
        double all = byDay.Sum() + later;
        DateOnly next = last.AddDays(intervalDays);
        DateOnly? At(double share) => Quantile(byDay, share * all) is { } day ? first.AddDays(Math.Max(day, span)) : null;
        (DateOnly? lower50, DateOnly? upper50) = Interval(At, 0.5);
        (DateOnly? lower90, DateOnly? upper90) = Interval(At, 0.9);
        return new Projection
        {
            Target = target,
            Median = At(0.5),
            Lower50 = lower50,
            Upper50 = upper50,
            Lower90 = lower90,
            Upper90 = upper90,
            Limit = first.AddDays(furthest),
            ReachedByLimit = 1 - (later / all),
            ReachedByNext = byDay.Take(next.DayNumber - first.DayNumber + 1).Sum() / all,
            Next = next,
        };
    }

    // With as much left out before it as after it. Where no end can be given, all that is left out lies before the begin: an end that is
    // dropped from the interval of two sides would leave one that holds more than it says.
    private static (DateOnly? Lower, DateOnly? Upper) Interval(Func<double, DateOnly?> at, double held) =>
        at((1 + held) / 2) is { } upper ? (at((1 - held) / 2), upper) : (at(1 - held), null);

    // The weight of every day from the first examination on; what lies beyond the furthest, or is never reached, is counted as later.
    private static double[] Votes(MeasuredPoint[] points, double logTarget, int furthest, out double later)
    {
        double[] days = [.. points.Select(point => (double)(point.Date.DayNumber - points[0].Date.DayNumber))];
        double[] sizes = [.. points.Select(point => Math.Log(point.Value))];
        double[] weights = [.. points.Select(Weight)];
        double information = weights.Sum();
        double startSd = 1 / Math.Sqrt(information);
        double[] byDay = new double[furthest + 1];
        later = 0;
        double best = double.NegativeInfinity;
        Span<(double LogWeight, double HalfLife, double Floor, double LogStart)> fits =
            stackalloc (double, double, double, double)[HalfLives * Floors];
        double[] left = new double[days.Length];
        for (int i = 0; i < HalfLives; i++)
        {
            double z = HalfLifeSpread * ((2.0 * i / (HalfLives - 1)) - 1);
            double halfLife = MedianDays * Math.Exp(LogSd * z);
            for (int k = 0; k < days.Length; k++)
            {
                left[k] = Math.Exp(-Math.Log(2) * days[k] / halfLife);
            }

            for (int j = 0; j < Floors; j++)
            {
                double floor = LargestFloor * j / (Floors - 1);
                double start = 0;
                double square = 0;
                for (int k = 0; k < days.Length; k++)
                {
                    double gap = sizes[k] - Math.Log(floor + ((1 - floor) * left[k]));
                    start += weights[k] * gap;
                    square += weights[k] * gap * gap;
                }

                start /= information;
                double logWeight = -0.5 * ((z * z) + square - (information * start * start));
                best = Math.Max(best, logWeight);
                fits[(i * Floors) + j] = (logWeight, halfLife, floor, start);
            }
        }

        foreach ((double logWeight, double halfLife, double floor, double start) in fits)
        {
            for (int s = 0; s < Starts; s++)
            {
                double z = StartSpread * ((2.0 * s / (Starts - 1)) - 1);
                double weight = Math.Exp(logWeight - best - (0.5 * z * z));
                double share = (Math.Exp(logTarget - start - (z * startSd)) - floor) / (1 - floor);
                double day =
                    share <= 0 ? double.PositiveInfinity
                    : share >= 1 ? 0
                    : -halfLife * Math.Log2(share);
                if (day > furthest)
                {
                    later += weight;
                }
                else
                {
                    byDay[(int)Math.Ceiling(day)] += weight;
                }
            }
        }

        return byDay;
    }

    // The error of a size as a share, from its band: the band of a volume is even on the log scale, that of an area nearly so.
    private static double Weight(MeasuredPoint point)
    {
        double sd = Math.Log(point.Upper95 / point.Value) / Log95;
        return 1 / (sd * sd);
    }

    private static int? Quantile(double[] byDay, double weight)
    {
        double sum = 0;
        for (int day = 0; day < byDay.Length; day++)
        {
            sum += byDay[day];
            if (sum >= weight)
            {
                return day;
            }
        }

        return null;
    }
}
