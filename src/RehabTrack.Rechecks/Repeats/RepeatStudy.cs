using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Repeats;

/// <summary>
/// What the repeats of one kind and one size tell: the error of all, of each measurer, and how measurers agree. Repeats of an image and
/// of a horse and day are never mixed: tracing an image again leaves out the probe.
/// </summary>
public sealed record RepeatStudy
{
    private static readonly ReferenceTable Limits = ReferenceTable.Load("repeats");

    private RepeatStudy() { }

    /// <summary>What was done anew.</summary>
    public required RepeatKind Kind { get; init; }

    /// <summary>What was measured.</summary>
    public required MeasuredSize Size { get; init; }

    /// <summary>Repeats by the same person, all persons together; null when nobody measured anything twice.</summary>
    public required RepeatError? All { get; init; }

    /// <summary>By measurer, in order of name; those who repeated nothing are left out.</summary>
    public required IReadOnlyList<(string Measurer, RepeatError Error)> ByMeasurer { get; init; }

    /// <summary>First less second repeat by the same person; null below two subjects.</summary>
    public required Agreement? FirstAgainstSecond { get; init; }

    /// <summary>Each two measurers who share at least two subjects, by their means of each subject; in order of name.</summary>
    public required IReadOnlyList<Agreement> BetweenMeasurers { get; init; }

    /// <summary>Subjects, whether repeated or not.</summary>
    public required int Subjects { get; init; }

    /// <summary>
    /// Whether the figures may become the practice's setting: repeats of a horse and day, of a size the error model knows, on enough
    /// degrees of freedom (<c>shared/repeats.json</c>), with a cv in the range of settings.
    /// </summary>
    public bool MayBecomeSetting =>
        Kind == RepeatKind.SameHorseAndDay
        && Size != MeasuredSize.LesionPercent
        && All is { Cv: > 0 and <= 1 } all
        && all.DegreesOfFreedom >= (int)Limits["fewestDegreesOfFreedom"];

    /// <summary>The studies of all kinds and sizes that have at least one subject, by kind and size. The order of the tracings decides only which repeat is first.</summary>
    /// <param name="tracings">All repeats, in the order they were made.</param>
    public static IReadOnlyList<RepeatStudy> Of(IEnumerable<RepeatTracing> tracings)
    {
        ArgumentNullException.ThrowIfNull(tracings);
        return
        [
            .. tracings
                .GroupBy(tracing => (tracing.Kind, tracing.Size))
                .OrderBy(group => group.Key.Kind)
                .ThenBy(group => group.Key.Size)
                .Select(group => Of(group.Key.Kind, group.Key.Size, [.. group])),
        ];
    }

    private static RepeatStudy Of(RepeatKind kind, MeasuredSize size, IReadOnlyList<RepeatTracing> tracings)
    {
        Series[] series =
        [
            .. tracings
                .GroupBy(tracing => (Subject: FoldedText.Of(tracing.Subject), Measurer: FoldedText.Of(tracing.Measurer ?? "")))
                .Select(group => new Series(
                    group.First().Subject,
                    group.First().Measurer,
                    group.Key.Measurer,
                    [.. group.Select(tracing => tracing.Value)]
                )),
        ];
        IGrouping<string, Series>[] measurers =
        [
            .. series
                .Where(one => one.Folded.Length > 0)
                .GroupBy(one => one.Folded, StringComparer.Ordinal)
                .OrderBy(group => group.Key, StringComparer.Ordinal),
        ];
        return new RepeatStudy
        {
            Kind = kind,
            Size = size,
            Subjects = tracings.Select(tracing => FoldedText.Of(tracing.Subject)).Distinct(StringComparer.Ordinal).Count(),
            All = ErrorOf(series),
            ByMeasurer =
            [
                .. measurers
                    .Select(group => (group.First().Measurer!, Error: ErrorOf([.. group])))
                    .Where(one => one.Error is not null)
                    .Select(one => (one.Item1, one.Error!)),
            ],
            FirstAgainstSecond = Agreement.Of([
                .. series
                    .Where(one => one.Values.Count >= 2)
                    .Select(one => new AgreementPoint(
                        one.Subject,
                        (one.Values[0] + one.Values[1]) / 2,
                        one.Values[0] - one.Values[1],
                        one.Measurer
                    )),
            ]),
            BetweenMeasurers =
            [
                .. measurers
                    .SelectMany((first, index) => measurers.Skip(index + 1).Select(second => Between([.. first], [.. second])))
                    .OfType<Agreement>(),
            ],
        };
    }

    private static Agreement? Between(Series[] first, Series[] second) =>
        Agreement.Of(
            [
                .. from one in first
                join other in second on FoldedText.Of(one.Subject) equals FoldedText.Of(other.Subject)
                let a = one.Values.Average()
                let b = other.Values.Average()
                select new AgreementPoint(one.Subject, (a + b) / 2, a - b, null),
            ],
            first[0].Measurer,
            second[0].Measurer
        );

    private static RepeatError? ErrorOf(IReadOnlyList<Series> all)
    {
        Series[] repeated = [.. all.Where(series => series.Values.Count >= 2)];
        if (repeated.Length == 0)
        {
            return null;
        }

        int degrees = repeated.Sum(series => series.Degrees);
        double within = Math.Sqrt(repeated.Sum(series => series.Degrees * series.Variance) / degrees);
        double? cv = Array.Exists(repeated, series => series.Mean <= 0)
            ? null
            : Math.Sqrt(repeated.Sum(series => series.Degrees * series.Variance / (series.Mean * series.Mean)) / degrees);
        return new RepeatError
        {
            Subjects = repeated.Length,
            Values = repeated.Sum(series => series.Values.Count),
            DegreesOfFreedom = degrees,
            Mean = repeated.SelectMany(series => series.Values).Average(),
            WithinStandardDeviation = within,
            Lower95 = within * Math.Sqrt(degrees / ChiSquared.InvCDF(degrees, 0.975)),
            Upper95 = within * Math.Sqrt(degrees / ChiSquared.InvCDF(degrees, 0.025)),
            Cv = cv,
            DetectableChange = Agreement.Limit * Math.Sqrt(2) * within,
            GrowsWithSize = RankCorrelationRises(repeated),
        };
    }

    // Kendall's S of spread on mean; the normal approximation without ties serves from ten subjects on, below nothing is claimed.
    private static bool RankCorrelationRises(Series[] repeated)
    {
        int n = repeated.Length;
        if (n < 10)
        {
            return false;
        }

        int score = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++)
            {
                score += Math.Sign(repeated[i].Mean - repeated[j].Mean) * Math.Sign(repeated[i].Variance - repeated[j].Variance);
            }
        }

        double deviation = Math.Sqrt(n * (n - 1.0) * ((2 * n) + 5) / 18);
        return (score - 1) / deviation > Normal.InvCDF(0, 1, 0.95);
    }

    /// <summary>What one person measured of one subject.</summary>
    private sealed record Series(string Subject, string? Measurer, string Folded, IReadOnlyList<double> Values)
    {
        public int Degrees => Values.Count - 1;

        public double Mean { get; } = Values.Average();

        public double Variance { get; } =
            Values.Count < 2 ? 0 : Values.Sum(value => (value - Values.Average()) * (value - Values.Average())) / (Values.Count - 1);
    }
}
