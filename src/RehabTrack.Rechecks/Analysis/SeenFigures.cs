using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;

namespace RehabTrack.Rechecks.Analysis;

/// <summary>
/// What an analysis said at one moment, as a person saw it, and what it rested on: kept beside a signature, so that today's figures can be
/// laid against it. All its numbers are finite.
/// </summary>
public sealed record SeenFigures
{
    /// <summary>Version of the engine that computed it.</summary>
    public required string EngineVersion { get; init; }

    /// <summary>The settings it was computed with.</summary>
    public required AnalysisSettings Settings { get; init; }

    /// <summary>The date it spoke for.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary><see cref="Analysis.InputHash.Of"/> of all that was read.</summary>
    public required string InputHash { get; init; }

    /// <summary>The verdict of the case.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The rule that spoke.</summary>
    public required VerdictReason Reason { get; init; }

    /// <summary>The measure that spoke; null when none could.</summary>
    public Measure? Measure { get; init; }

    /// <summary>Change in % per 60 days over the examinations that decide; null when there was no rate.</summary>
    public double? RatePercentPer60Days { get; init; }

    /// <summary>Lower end of its 95 % interval.</summary>
    public double? Lower95Percent { get; init; }

    /// <summary>Upper end of its 95 % interval.</summary>
    public double? Upper95Percent { get; init; }

    /// <summary>The measure at every examination that had it, in order of date.</summary>
    public required IReadOnlyList<SeenValue> Values { get; init; }

    /// <summary>Which places were held to be one.</summary>
    public required IReadOnlyList<SeenTrack> Links { get; init; }

    /// <summary>What a person was told, worst first.</summary>
    public required IReadOnlyList<SeenFinding> Findings { get; init; }

    /// <summary><see cref="Analysis.InputHash.OfCase"/>.</summary>
    public required string CaseFingerprint { get; init; }

    /// <summary>The examinations that were read, in order of date and id.</summary>
    public required IReadOnlyList<SeenExamination> Examinations { get; init; }

    /// <summary>The words of persons on links that counted, in the order they were said.</summary>
    public required IReadOnlyList<LinkConstraint> LinkWords { get; init; }

    /// <summary>Takes down what an analysis says.</summary>
    /// <param name="course">The course that was analysed; examinations after the analysis's date are passed over.</param>
    /// <param name="constraints">The words on links it was analysed with.</param>
    /// <param name="analysis">Its analysis.</param>
    public static SeenFigures Of(CaseCourse course, IReadOnlyList<LinkConstraint> constraints, CaseAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(course);
        ArgumentNullException.ThrowIfNull(constraints);
        ArgumentNullException.ThrowIfNull(analysis);
        Trend trend = analysis.Trend;
        SlopeFigures? window = trend.Window;
        return new SeenFigures
        {
            EngineVersion = analysis.EngineVersion,
            Settings = analysis.Settings,
            AsOf = analysis.AsOf,
            InputHash = Analysis.InputHash.Of(course, constraints, analysis.Settings, analysis.AsOf),
            Verdict = trend.Verdict,
            Reason = trend.Reason,
            Measure = trend.Measure,
            RatePercentPer60Days = Finite(window?.RatePercent),
            Lower95Percent = Finite(window?.Lower95Percent),
            Upper95Percent = Finite(window?.Upper95Percent),
            Values = trend.Measure is not { } measure
                ? []
                : [.. trend.Series.Select(point => ValueOf(point, measure, new MeasurementError(analysis.Settings.Error, course.Limb)))],
            Links = [.. analysis.Links.Tracks.Select(track => new SeenTrack(track.Id, [.. track.Steps.Select(step => step.Place.Key)]))],
            Findings = [.. analysis.Findings.Select(finding => new SeenFinding(finding.Kind, finding.Severity, finding.ExaminationId))],
            CaseFingerprint = Analysis.InputHash.OfCase(course),
            Examinations =
            [
                .. course
                    .Examinations.Where(examination => examination.Date <= analysis.AsOf)
                    .OrderBy(examination => examination.Date)
                    .ThenBy(examination => examination.Id, StringComparer.Ordinal)
                    .Select(examination => new SeenExamination(
                        examination.Id,
                        examination.Date,
                        Analysis.InputHash.OfExamination(examination)
                    )),
            ],
            LinkWords = constraints,
        };
    }

    // One standard error on the scale on which the measure is compared, read back off the upper end of the 95 % band.
    private static SeenValue ValueOf(SeriesPoint point, Measure measure, MeasurementError error)
    {
        (double below, double above) = measure switch
        {
            Healing.Measure.LesionVolume when point.Lower95 > 0 => Multiplied(Math.Log(point.Upper95 / point.Value)),
            Healing.Measure.LesionVolume or Healing.Measure.ThicknessExcess or Healing.Measure.ThicknessAboveOwn => Added(
                point.Upper95 - point.Value
            ),
            Healing.Measure.LesionArea => OnScale(error.LesionAreaScale),
            Healing.Measure.LesionPercent => OnScale(error.LesionPercentScale),
            Healing.Measure.Thickness => OnScale(error.ThicknessScale),
            Healing.Measure.Grades => (point.Value, point.Value),
        };
        return new SeenValue
        {
            ExaminationId = point.ExaminationId,
            Date = point.Date,
            Value = point.Value,
            Below = below,
            Above = above,
            Lower95 = point.Lower95,
            Upper95 = point.Upper95,
        };

        (double Below, double Above) Multiplied(double band)
        {
            double factor = Math.Exp(band / ComparisonFactors.Single);
            return (point.Value / factor, point.Value * factor);
        }

        (double Below, double Above) Added(double band)
        {
            double width = band / ComparisonFactors.Single;
            return (Math.Max(0, point.Value - width), point.Value + width);
        }

        (double Below, double Above) OnScale(WorkingScale scale)
        {
            double y = scale.ToScale(point.Value);
            double width = (scale.ToScale(point.Upper95) - y) / ComparisonFactors.Single;
            return (Math.Max(0, scale.FromScale(y - width)), scale.FromScale(y + width));
        }
    }

    private static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;
}
