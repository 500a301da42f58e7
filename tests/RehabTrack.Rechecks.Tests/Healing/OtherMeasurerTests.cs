using MathNet.Numerics.Distributions;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>
/// Another measurer than before has 1.5 times the error (Pickersgill 2001: who traces the outline matters; the factor is an assumption):
/// what counts as "before" is the other end of the pair that is compared.
/// </summary>
public sealed class OtherMeasurerTests
{
    private const double Cv = 0.08;
    private const double Factor = 1.5;

    // Without floor and gain the working scale is the logarithm, and every reading has the SD cv.
    private static readonly AnalysisSettings OnlyCv = new()
    {
        Error = new MeasurementErrorSettings
        {
            LesionAreaCv = Cv,
            LigamentAreaCv = Cv,
            AreaFloorCm2 = 1e-6,
            SharedGainLog = 0,
            OtherMeasurerFactor = Factor,
        },
        Trend = new TrendSettings { WindowExaminations = 4 },
    };

    /// <summary>One level, measured by the persons named by letters; a space is nobody.</summary>
    private static CaseCourse Measured(string persons, params double[] areas) =>
        Case(
            persons.Select(
                (person, i) => Exam(60 * i, Row(18, 3, areas[Math.Min(i, areas.Length - 1)], measurer: person == ' ' ? null : $"{person}."))
            )
        );

    private static Trend Of(string persons, params double[] areas) => Analysed(Measured(persons, areas), OnlyCv).Trend;

    private static double RiseOf(double ownVariance, double otherVariance, double factor) =>
        100 * (Math.Exp(factor * Cv * Math.Sqrt(ownVariance + otherVariance)) - 1);

    [Theory]
    [InlineData("AAAA", 1)]
    [InlineData("AAAB", Factor)]
    // The second reading of the new person stands against the first of the old one just as her first did.
    [InlineData("AABB", Factor)]
    [InlineData("ABBB", Factor)]
    // Back to the first person: the pair has one measurer, whoever measured between.
    [InlineData("ABAA", 1)]
    [InlineData("AABA", 1)]
    [InlineData("ABCA", 1)]
    // Nobody named counts as the same.
    [InlineData(" BBB", 1)]
    [InlineData("AAA ", 1)]
    public void First_to_last_is_widened_by_its_own_pair(string persons, double widening)
    {
        Trend trend = Of(persons, 1);

        Assert.Equal(RiseOf(1, widening * widening, ComparisonFactors.WithBaseline(3)), trend.DetectableRisePercent!.Value, 6);
    }

    [Theory]
    [InlineData("AA")]
    [InlineData("AB")]
    [InlineData("A ")]
    public void The_trend_and_the_comparison_of_one_place_agree_about_one_pair(string persons)
    {
        CaseCourse course = Measured(persons, 1);
        // Small enough that what the comparison takes to second order does not show.
        AnalysisSettings fine = OnlyCv with
        {
            Error = OnlyCv.Error with { LesionAreaCv = 0.01 },
        };
        CaseAnalysis analysis = Analysed(course, fine);
        Track track = Assert.Single(analysis.Links.Tracks);

        SizeChange change = PlaceComparison
            .Between(track.Steps[0].Place, track.Steps[1].Place, fine.Error, course.Limb, ComparisonFactors.Single)
            .Single(one => one.Size == MeasuredSize.LesionArea);

        Assert.Equal(change.DetectablePercent!.Value, analysis.Trend.DetectableRisePercent!.Value, 0.01);
    }

    [Theory]
    [InlineData("AAAAA", true)]
    // Whoever measured the best measured the last too.
    [InlineData("ABAAB", true)]
    [InlineData("CBABB", true)]
    // Two persons at the two ends, at the first change and after it.
    [InlineData("AAAAB", false)]
    [InlineData("AAABB", false)]
    [InlineData("AABBB", false)]
    public void A_rise_above_the_best_so_far_is_held_to_the_error_of_that_pair(string persons, bool isTold)
    {
        // Best 1.00 at the second. Any two of five need e^(2.7278·.08·√2) = +36 % from one person, e^(2.7278·.08·√3.25) = +48 % from two.
        AnalysisSettings lastThree = OnlyCv with
        {
            Trend = new TrendSettings(),
        };
        Trend trend = Analysed(Measured(persons, 1.42, 1.0, 1.42, 1.42, 1.42), lastThree).Trend;
        Assert.Equal(2.7278, ComparisonFactors.AnyTwo(4), 4);

        Assert.Equal(isTold, trend.Reason == VerdictReason.RiseAboveBest);
    }

    [Theory]
    [InlineData("AAAA")]
    [InlineData("AAAB")]
    [InlineData("AABB")]
    [InlineData("ABBB")]
    [InlineData("ABAB")]
    [InlineData("ABBA")]
    [InlineData("ABCD")]
    [InlineData("BAAC")]
    [InlineData("A BB")]
    public void The_slope_counts_that_a_person_is_off_by_the_same_at_each_of_her_examinations(string persons)
    {
        // By the whole matrix: each reading has cv², and two readings of one person who is not the usual one share cv²·(1.5² − 1).
        char usual = persons.Trim().GroupBy(person => person).OrderByDescending(one => one.Count()).First().Key;
        bool IsOther(int i) => persons[i] != usual && persons[i] != ' ';
        double[] weights = [.. Enumerable.Range(0, 4).Select(i => IsOther(i) ? 1 / (Factor * Factor) : 1)];
        double mean = Enumerable.Range(0, 4).Sum(i => weights[i] * i) / weights.Sum();
        double spread = Enumerable.Range(0, 4).Sum(i => weights[i] * (i - mean) * (i - mean));
        double[] parts = [.. Enumerable.Range(0, 4).Select(i => weights[i] * (i - mean) / spread)];
        double variance = 0;
        for (int i = 0; i < 4; i++)
        {
            for (int j = 0; j < 4; j++)
            {
                double own = i == j ? 1 : 0;
                double shared = IsOther(i) && persons[i] == persons[j] ? (Factor * Factor) - 1 : 0;
                variance += parts[i] * parts[j] * (own + shared);
            }
        }

        Assert.Equal(Cv * Math.Sqrt(variance), Of(persons, 1, 0.9, 0.8, 0.7).Window!.StandardError, 9);
    }

    [Fact]
    public void Of_three_examinations_it_does_not_matter_which_end_the_other_person_measured()
    {
        SlopeFigures early = Of("ABB", 1, 0.9, 0.8).Window!;
        SlopeFigures late = Of("AAB", 1, 0.9, 0.8).Window!;
        SlopeFigures between = Of("ABA", 1, 0.9, 0.8).Window!;
        SlopeFigures same = Of("AAA", 1, 0.9, 0.8).Window!;

        Assert.Equal(early.StandardError, late.StandardError, 9);
        Assert.True(early.StandardError > 1.2 * same.StandardError);
        // What lies in the middle does not turn a line through three even dates.
        Assert.Equal(same.StandardError, between.StandardError, 9);
    }

    [Fact]
    public void The_band_of_a_point_is_wider_where_another_person_measured_than_at_most()
    {
        IReadOnlyList<SeriesPoint> series = Of("ABBAA", 1).Series;

        Assert.Equal([1, Factor, Factor, 1, 1], series.Select(point => Math.Round(Math.Log(point.Upper95) / (1.959963984540054 * Cv), 9)));
    }

    [Fact]
    public void Only_the_levels_that_another_person_measured_widen_a_volume()
    {
        // Two lesion levels of equal weight and area: each has half of the variance of its examination.
        CaseCourse Course(string first, string second) => Case(Exam(0, At("A.", "A.")), Exam(60, At(first, second)));
        IEnumerable<Reading> At(string first, string second) =>
            [
                Row(10, 3, 0, measurer: "A."),
                Row(14, 3, 0.5, measurer: first),
                Row(18, 3, 0.5, measurer: second),
                Row(22, 3, 0, measurer: "A."),
            ];
        double VarianceOf(string first, string second) =>
            Math.Pow(Math.Log(1 + (Analysed(Course(first, second), OnlyCv).Trend.DetectableRisePercent!.Value / 100)), 2);

        double same = VarianceOf("A.", "A.");
        Assert.Equal(same * (1 + ((1 + (Factor * Factor)) / 2)) / 2, VarianceOf("A.", "B."), 6);
        Assert.Equal(same * (1 + (Factor * Factor)) / 2, VarianceOf("B.", "B."), 6);
        Assert.Equal(VarianceOf("B.", "B."), VarianceOf("B.", "C."), 9);
    }

    [Theory]
    // +30 % lies beyond 1.96·.08·√2 = 25 % of one person and within 1.96·.08·√3.25 = 33 % of two.
    [InlineData("AAB", true)]
    [InlineData("ABB", false)]
    [InlineData("AAA", false)]
    public void A_rise_of_the_ligament_says_so_only_where_the_two_ends_have_two_measurers(string persons, bool mayBeError)
    {
        double[] ligament = [1.5, 1.5, 1.95];
        CaseCourse course = Case(persons.Select((person, i) => Exam(60 * i, Row(18, ligament[i], 0.3, measurer: $"{person}."))));

        Finding rise = Analysed(course, OnlyCv).Findings.Single(finding => finding.Kind == FindingKind.LigamentAreaRise);

        Assert.Equal(mayBeError, rise.MayBeMeasurementError);
    }

    /// <summary>
    /// Simulated: the second person reads every size of a place by one unknown factor larger or smaller, so that a pair of the two has 1.5
    /// times the error of the later one. At 1.96 standard errors a slope that holds is left outside in 5 %.
    /// </summary>
    [Theory]
    [InlineData("AAAA")]
    [InlineData("AABB")]
    [InlineData("ABBB")]
    [InlineData("AAAB")]
    [InlineData("ABAB")]
    public void The_error_of_the_slope_is_as_large_as_it_says(string persons)
    {
        const int Cases = 1000;
        const double Rate = -0.2;
        Random random = new(12);
        int outside = 0;
        for (int i = 0; i < Cases; i++)
        {
            double off = Cv * Math.Sqrt((Factor * Factor) - 1) * Normal.Sample(random, 0, 1);
            double[] areas =
            [
                .. persons.Select((person, look) => Math.Exp((Rate * look) + Normal.Sample(random, 0, Cv) + (person == 'B' ? off : 0))),
            ];
            SlopeFigures slope = Of(persons, areas).Window!;
            outside += Math.Abs(slope.LogPer60Days - Rate) > 1.959963984540054 * slope.StandardError ? 1 : 0;
        }

        // Close to 3 binomial standard errors.
        Assert.Equal(0.05, outside / (double)Cases, 0.02);
    }
}
