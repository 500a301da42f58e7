using System.Runtime.InteropServices;
using RehabTrack.Rechecks.Exams;

namespace RehabTrack.Rechecks.Healing;

/// <summary>From measures to a verdict: the rules of docs/methods/healing.md, in their order.</summary>
internal sealed class TrendReader(CaseGrid grid, TrendSettings settings, DateOnly? start)
{
    // A verdict that needs more rechecks than these cannot be promised.
    private const int FurthestLook = 4;
    private const double DaysOfRate = 60;

    private readonly int[] _trend = [.. grid.Compared.Where(e => start is not { } from || grid.Examinations[e].Date >= from)];

    /// <summary>Indices of the examinations in the trend: one stance, acute phase over.</summary>
    public IReadOnlyList<int> Examinations => _trend;

    /// <summary>The trend of a lesion, or of all lesions of the case.</summary>
    public Trend Read(LesionGrid lesion)
    {
        IReadOnlyList<MeasureSeries> all = SeriesReader.Read(grid, lesion, _trend);
        if (Speaking(all) is not { } series)
        {
            return Silent(VerdictReason.NoMeasure, null, [], lesion);
        }

        MeasuredPoint[] points = [.. series.Points.Where(point => Array.IndexOf(_trend, point.Examination) >= 0)];
        if (points.Length == 0)
        {
            return Silent(VerdictReason.AcutePhase, series.Measure, series.Points, lesion);
        }

        if (points.Length == 1)
        {
            return Silent(VerdictReason.OnlyOneExamination, series.Measure, series.Points, lesion) with { Since = points[0].Date };
        }

        MeasuredPoint[] window = points[^Math.Min(points.Length, Math.Max(3, settings.WindowExaminations))..];
        return series.Measure == Measure.Grades ? ReadGrades(series, points, window, lesion) : ReadSizes(series, points, window, lesion);
    }

    // The first measure that enough examinations have, the latest among them; a measure that the latest lacks speaks only when none has it.
    private MeasureSeries? Speaking(IReadOnlyList<MeasureSeries> all)
    {
        int needed = Math.Min(3, _trend.Length);
        int CountOf(MeasureSeries series) => series.Points.Count(point => Array.IndexOf(_trend, point.Examination) >= 0);
        bool HasLatest(MeasureSeries series) => _trend.Length > 0 && series.Points.Any(point => point.Examination == _trend[^1]);
        return all.FirstOrDefault(series => series.Measure != Measure.Grades && CountOf(series) >= needed && HasLatest(series))
            ?? all.FirstOrDefault(series => CountOf(series) >= needed && series.Measure != Measure.Grades)
            ?? all.FirstOrDefault(series => CountOf(series) >= needed)
            ?? all.MaxBy(CountOf);
    }

    private Trend ReadSizes(MeasureSeries series, MeasuredPoint[] points, MeasuredPoint[] window, LesionGrid lesion)
    {
        MeasuredPoint last = points[^1];
        MeasuredPoint best = BestOf(points.AsSpan()[..^1]);
        bool fromBaseline = window[0] == points[0];
        Trend trend = Silent(VerdictReason.Undecided, series.Measure, series.Points, lesion, window) with
        {
            Window = FiguresOf(window),
            Course = FiguresOf(points),
            Since = window[0].Date,
        };
        trend = Compared(
            trend,
            window[0],
            last,
            fromBaseline ? ComparisonFactors.WithBaseline(points.Length - 1) : ComparisonFactors.AnyTwo(points.Length - 1)
        );
        bool isLatest = last.Examination == _trend[^1];
        bool blocked = !isLatest || lesion.WorstMissedAt(last.Examination);
        double anyTwo = ComparisonFactors.AnyTwo(points.Length - 1);
        Trend aboveBest = Compared(trend, best, last, anyTwo) with { Since = best.Date };

        if (points.Length == 2)
        {
            return IsAbove(best, last, anyTwo, series.Measure) ? Said(aboveBest, Verdict.Worsening, VerdictReason.RiseAboveBest)
                : IsAbove(last, best, anyTwo, null) ? Unsettled(trend, points, window, VerdictReason.TwoBeyondErrorDown, series.Measure)
                : Unsettled(trend, points, window, VerdictReason.TwoWithinError, series.Measure);
        }

        return RuleOf(series.Measure, points, window) switch
        {
            VerdictReason.RiseOfSlope => Said(trend, Verdict.Worsening, VerdictReason.RiseOfSlope),
            VerdictReason.RiseAboveBest => Said(aboveBest, Verdict.Worsening, VerdictReason.RiseAboveBest),
            VerdictReason.TargetReached or VerdictReason.NotMeasurable when blocked || lesion.MissedAt(last.Examination).Count > 0 => Said(
                trend,
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead
            ),
            VerdictReason.NotMeasurable => Said(trend, Verdict.AtTarget, VerdictReason.NotMeasurable),
            VerdictReason.TargetReached => Said(trend, Verdict.AtTarget, VerdictReason.TargetReached),
            VerdictReason.BelowAcceptableRate => Said(trend, Verdict.Stalled, VerdictReason.BelowAcceptableRate),
            VerdictReason.FallsTooSlowly or VerdictReason.FallOfSlope when blocked => Said(
                trend,
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead
            ),
            VerdictReason.FallsTooSlowly => Projected(Said(trend, Verdict.HealingSlowly, VerdictReason.FallsTooSlowly), points),
            VerdictReason.FallOfSlope => Projected(Said(trend, Verdict.Healing, VerdictReason.FallOfSlope), points),
            _ => Unsettled(
                trend,
                points,
                window,
                MeasureRules.HasRate(series.Measure) ? VerdictReason.Undecided : VerdictReason.NoReference,
                series.Measure
            ),
        };
    }

    // The rules in their order, on three sizes or more; null when none of them speaks.
    private VerdictReason? RuleOf(Measure measure, ReadOnlySpan<MeasuredPoint> points, ReadOnlySpan<MeasuredPoint> window)
    {
        MeasuredPoint last = points[^1];
        Slope slope = SlopeOf(window);
        if (slope.Value > settings.WorseningZ * slope.StandardError)
        {
            return VerdictReason.RiseOfSlope;
        }

        if (IsAbove(BestOf(points[..^1]), last, ComparisonFactors.AnyTwo(points.Length - 1), measure))
        {
            return VerdictReason.RiseAboveBest;
        }

        bool hasRate = MeasureRules.HasRate(measure);
        if (hasRate && IsAtTarget(points[0], last))
        {
            return last.IsNotMeasurable ? VerdictReason.NotMeasurable : VerdictReason.TargetReached;
        }

        bool falls = slope.Value < -settings.HealingZ * slope.StandardError;
        bool tooSlow = hasRate && settings.StallBound(slope.Value, slope.StandardError) > Slowest;
        return (tooSlow, falls) switch
        {
            (true, false) => VerdictReason.BelowAcceptableRate,
            (true, true) => VerdictReason.FallsTooSlowly,
            (false, true) => VerdictReason.FallOfSlope,
            (false, false) => null,
        };
    }

    private static MeasuredPoint BestOf(ReadOnlySpan<MeasuredPoint> points)
    {
        MeasuredPoint best = points[0];
        foreach (MeasuredPoint point in points)
        {
            best = point.Y < best.Y ? point : best;
        }

        return best;
    }

    private Trend ReadGrades(MeasureSeries series, MeasuredPoint[] points, MeasuredPoint[] window, LesionGrid lesion)
    {
        Trend trend = Silent(VerdictReason.GradesUndecided, series.Measure, series.Points, lesion, window) with { Since = points[0].Date };
        if (!IsFibreAlignment(points[^1]))
        {
            return trend;
        }

        Kendall kendall = Kendall.Of([.. points.Select(point => (int)point.Value)]);
        bool blocked = points[^1].Examination != _trend[^1] || lesion.WorstMissedAt(points[^1].Examination);
        // A claim of healing is tested on both sides, a caution on one.
        return kendall.S > 0 && kendall.Rise <= settings.GradesProbability ? Said(trend, Verdict.Worsening, VerdictReason.GradesWorse)
            : kendall.S < 0 && kendall.TwoSided <= settings.GradesProbability
                ? blocked ? Said(trend, Verdict.NotYetReadable, VerdictReason.WorstLevelNotRead)
                    : Said(trend, Verdict.Healing, VerdictReason.GradesBetter)
            : trend;
    }

    private bool IsFibreAlignment(MeasuredPoint point) =>
        Enumerable.Range(0, grid.Tracks.Count).Any(t => grid.Step(point.Examination, t)?.Place.FibreAlignment is not null);

    // The phase that holds at the latest examination is the one the course is asked to keep up with.
    private double Slowest => settings.SlowestAcceptableIn(PhaseAt(_trend.Length > 0 ? grid.Examinations[_trend[^1]].Date : null));

    private PlanPhase? PhaseAt(DateOnly? date) =>
        grid
            .Course.PlanPhases.Where(phase => phase.From <= date)
            .OrderBy(phase => phase.From)
            .ThenBy(phase => phase.Phase)
            .LastOrDefault()
            ?.Phase;

    private bool IsAtTarget(MeasuredPoint first, MeasuredPoint last) => last.IsNotMeasurable || last.Value <= TargetOf(first);

    private double TargetOf(MeasuredPoint first) => (grid.Course.TargetFraction ?? settings.TargetFraction) * first.Value;

    private Trend Projected(Trend trend, MeasuredPoint[] points) =>
        MeasureRules.IsOfLesion(trend.Measure!.Value)
            ? trend with
            {
                Projection = Projector.Project(MeasuredLine.Weighed(points), TargetOf(points[0]), settings.UsualIntervalDays),
            }
            : trend;

    private bool IsAbove(MeasuredPoint earlier, MeasuredPoint later, double factor, Measure? guarded) =>
        later.Y - earlier.Y > factor * Joint(earlier, later)
        && (guarded is not { } measure || later.Value - earlier.Value > GuardOf(measure));

    private double GuardOf(Measure measure) =>
        measure switch
        {
            Measure.LesionVolume => settings.GuardVolumeCm3,
            Measure.LesionArea => settings.GuardAreaCm2,
            // The same guard in a ligament of 1 cm².
            Measure.LesionPercent => 100 * settings.GuardAreaCm2,
            Measure.Thickness or Measure.ThicknessExcess or Measure.ThicknessAboveOwn => settings.GuardThicknessCm,
            Measure.Grades => 0,
        };

    // The later of the two is the one that another person may have measured.
    private static double Joint(MeasuredPoint one, MeasuredPoint other)
    {
        (MeasuredPoint earlier, MeasuredPoint later) = one.Examination <= other.Examination ? (one, other) : (other, one);
        double deviation = later.DeviationFrom(earlier);
        return Math.Sqrt((earlier.StandardDeviation * earlier.StandardDeviation) + (deviation * deviation));
    }

    private static Trend Said(Trend trend, Verdict verdict, VerdictReason reason) => trend with { Verdict = verdict, Reason = reason };

    private static Trend Compared(Trend trend, MeasuredPoint from, MeasuredPoint to, double factor)
    {
        double detectable = factor * Joint(from, to);
        return trend with
        {
            ChangePercent = from.Value > 0 ? 100 * ((to.Value / from.Value) - 1) : null,
            DetectableRisePercent = SlopeFigures.ToPercent(detectable),
            DetectableFallPercent = SlopeFigures.ToPercent(-detectable),
        };
    }

    private Trend Unsettled(Trend trend, MeasuredPoint[] points, MeasuredPoint[] window, VerdictReason reason, Measure measure) =>
        Said(trend, Verdict.NotYetReadable, reason) with
        {
            MoreExaminationsToSettle = MoreToSettle(measure, points, window),
        };

    // Continues the course as it goes now, at the usual interval and with the latest error, and asks the same rules.
    private int? MoreToSettle(Measure measure, MeasuredPoint[] points, MeasuredPoint[] window)
    {
        if (FitOf(window) is not { } line)
        {
            return null;
        }

        MeasuredPoint largest = points.MaxBy(point => point.Value)!;
        List<MeasuredPoint> course = [.. points];
        int size = Math.Max(3, settings.WindowExaminations);
        for (int more = 1; more <= FurthestLook; more++)
        {
            DateOnly date = course[^1].Date.AddDays(settings.UsualIntervalDays);
            double y = line.Intercept + (line.Slope * (date.DayNumber - window[0].Date.DayNumber));
            course.Add(window[^1] with { Date = date, Y = y, Value = SizeOf(measure, y, largest), IsNotMeasurable = false });
            ReadOnlySpan<MeasuredPoint> all = CollectionsMarshal.AsSpan(course);
            if (RuleOf(measure, all, all[^Math.Min(size, all.Length)..]) is not null)
            {
                return more;
            }
        }

        return null;
    }

    // A volume is compared by its logarithm; every other size by asinh(k·x), so that sizes of one series are as the sinh of their y.
    private static double SizeOf(Measure measure, double y, MeasuredPoint known) =>
        measure == Measure.LesionVolume ? Math.Exp(y)
        : known.Value > 0 ? Math.Max(0, known.Value * Math.Sinh(y) / Math.Sinh(known.Y))
        : 0;

    private readonly record struct Slope(double Value, double StandardError);

    private static Slope SlopeOf(ReadOnlySpan<MeasuredPoint> window) =>
        FitOf(window) is { } line
            ? new Slope(DaysOfRate * line.Slope, DaysOfRate * line.SlopeStandardError)
            : new Slope(0, double.PositiveInfinity);

    private static WeightedLine? FitOf(ReadOnlySpan<MeasuredPoint> points) => MeasuredLine.Through(points);

    private SlopeFigures? FiguresOf(MeasuredPoint[] points)
    {
        if (FitOf(points) is not { } line)
        {
            return null;
        }

        (double lower, double upper) = line.ModeratedInterval(settings.PriorDegreesOfFreedom);
        return new SlopeFigures
        {
            LogPer60Days = DaysOfRate * line.Slope,
            StandardError = DaysOfRate * line.SlopeStandardError,
            Lower95Log = DaysOfRate * lower,
            Upper95Log = DaysOfRate * upper,
            Examinations = points.Length,
            From = points[0].Date,
            To = points[^1].Date,
        };
    }

    private Trend Silent(
        VerdictReason reason,
        Measure? measure,
        IReadOnlyList<MeasuredPoint> series,
        LesionGrid lesion,
        MeasuredPoint[]? window = null
    ) =>
        new()
        {
            Verdict = Verdict.NotYetReadable,
            Reason = reason,
            Measure = measure,
            Series =
            [
                .. series.Select(point => new SeriesPoint
                {
                    ExaminationId = point.ExaminationId,
                    Date = point.Date,
                    Value = point.Value,
                    Lower95 = point.Lower95,
                    Upper95 = point.Upper95,
                    Complete = lesion.MissedAt(point.Examination).Count == 0,
                    InTrend = Array.IndexOf(_trend, point.Examination) >= 0,
                    InWindow = window?.Any(inside => inside.Examination == point.Examination) ?? false,
                }),
            ],
            Window = null,
            Course = null,
            ChangePercent = null,
            DetectableRisePercent = null,
            DetectableFallPercent = null,
            MoreExaminationsToSettle = null,
            Projection = null,
            Since = null,
            SlowestAcceptableLogPer60Days = Slowest,
        };
}
