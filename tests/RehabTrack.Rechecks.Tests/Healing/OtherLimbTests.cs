using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>The other sound limb as reference, and the slowest acceptable rate by phase of the plan.</summary>
public sealed class OtherLimbTests
{
    /// <summary>A course of thicknesses at one level, 60 days apart, with the other limb's thickness at each.</summary>
    private static CaseCourse Thick(double? other, params double[] thicknesses) =>
        Case(
            thicknesses.Select(
                (thickness, visit) =>
                    Exam(
                        60 * visit,
                        Row(18) with
                        {
                            Thickness = new Centimetres(thickness),
                            OtherLimbThickness = other is { } sound ? new Centimetres(sound) : null,
                        }
                    )
            )
        );

    private static Trend TrendOf(CaseCourse course) => Analysed(course).Trend;

    // Excess .8 .4 .2 cm: halved each time.
    [Fact]
    public void Above_a_sound_limb_a_thickness_can_be_healing()
    {
        Trend trend = TrendOf(Thick(1.0, 1.8, 1.4, 1.2));

        Assert.Equal((Measure.ThicknessExcess, Verdict.Healing), (trend.Measure!.Value, trend.Verdict));
        Assert.Equal([0.8, 0.4, 0.2], trend.Series.Select(point => Math.Round(point.Value, 10)));
        Assert.Null(trend.Projection);
    }

    [Fact]
    public void Above_a_sound_limb_a_thickness_that_stays_shows_no_progress()
    {
        Assert.Equal(Verdict.Stalled, TrendOf(Thick(1.0, 2.2, 2.2, 2.2)).Verdict);
        Trend alone = TrendOf(Thick(null, 2.2, 2.2, 2.2));
        Assert.Equal((Measure.Thickness, Verdict.NotYetReadable), (alone.Measure!.Value, alone.Verdict));
    }

    [Fact]
    public void An_excess_that_can_no_longer_be_told_from_none_is_at_target()
    {
        Trend trend = TrendOf(Thick(1.0, 1.8, 1.4, 1.05));

        Assert.Equal((Verdict.AtTarget, VerdictReason.NotMeasurable), (trend.Verdict, trend.Reason));
    }

    [Fact]
    public void A_level_that_was_never_thicker_says_nothing_by_its_excess() =>
        Assert.Equal(Measure.Thickness, TrendOf(Thick(1.0, 1.02, 1.0, 1.01)).Measure);

    [Fact]
    public void An_injured_other_limb_is_no_reference()
    {
        CaseCourse course = Thick(1.0, 2.2, 2.2, 2.2) with { OtherLimb = OtherLimb.HasLesion };

        Assert.Equal((Measure.Thickness, Verdict.NotYetReadable), (TrendOf(course).Measure!.Value, TrendOf(course).Verdict));
    }

    [Fact]
    public void An_excess_of_zero_breaks_nothing()
    {
        Trend trend = TrendOf(Thick(1.0, 1.8, 1.0, 0.8));

        Assert.All(trend.Series, point => Assert.True(double.IsFinite(point.Value) && point.Lower95 >= 0 && point.Upper95 >= point.Value));
        Assert.Equal(Verdict.AtTarget, trend.Verdict);
    }

    // Berner 2017 (Vet Rec j5746), SDFT: 120 against 98 mm² is 22.4 % larger, enlarged; 117 is 19.4 %, not.
    [Theory]
    [InlineData(1.20, 22.449)]
    [InlineData(1.17, null)]
    public void More_than_a_fifth_above_the_other_limb_is_told(double area, double? percent)
    {
        CaseCourse course = Case(Exam(0, Row(18, area, 0) with { OtherLimbLigamentArea = Cm2(0.98) }));
        Finding? Told(CaseCourse of) => Analysed(of).Findings.SingleOrDefault(finding => finding.Kind == FindingKind.LargerThanOtherLimb);

        Finding? found = Told(course);

        Assert.Equal(percent, found?.ChangePercent is { } change ? Math.Round(change, 3) : null);
        Assert.Null(Told(course with { OtherLimb = OtherLimb.HasLesion }));
    }

    // Falls of 10 % in 60 days, measured well: slower than -14 %, faster than -5 %.
    [Theory]
    [InlineData(null, Verdict.HealingSlowly)]
    [InlineData(PlanPhase.Walk, Verdict.HealingSlowly)]
    [InlineData(PlanPhase.Trot, Verdict.Healing)]
    public void The_slowest_acceptable_rate_is_that_of_the_plans_phase(PlanPhase? phase, Verdict expected)
    {
        AnalysisSettings settings = new()
        {
            Error = new MeasurementErrorSettings
            {
                LesionAreaCv = 0.01,
                LigamentAreaCv = 0.01,
                AreaFloorCm2 = 0.001,
                SharedGainLog = 0,
            },
            Trend = new TrendSettings { SlowestAcceptableAtTrotLogPer60Days = -0.05 },
        };
        CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.9)), Exam(120, SixLevels(0.81))) with
        {
            PlanPhases = phase is { } held
                ? [new PlanPhaseStart(Start.AddDays(30), held), new PlanPhaseStart(Start.AddDays(121), PlanPhase.CanterOrGallop)]
                : [],
        };

        Trend trend = Analysed(course, settings).Trend;

        Assert.Equal(expected, trend.Verdict);
        Assert.Equal(phase == PlanPhase.Trot ? -0.05 : -0.15, trend.SlowestAcceptableLogPer60Days);
    }
}
