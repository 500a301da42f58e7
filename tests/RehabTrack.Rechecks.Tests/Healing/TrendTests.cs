using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class TrendTests
{
    private static Trend Of(params IEnumerable<Examination> examinations) => Analysed(Case(examinations)).Trend;

    private static Trend Sizes(params IEnumerable<double> sizes) => Of(sizes.Select((size, i) => Exam(60 * i, SixLevels(size))));

    public sealed class Rules
    {
        [Fact]
        public void One_examination_says_nothing() => Says(Verdict.NotYetReadable, VerdictReason.OnlyOneExamination, Sizes(1));

        [Fact]
        public void No_examination_says_nothing() => Says(Verdict.NotYetReadable, VerdictReason.NoMeasure, Of());

        [Fact]
        public void Two_examinations_are_a_difference_never_a_trend()
        {
            Says(Verdict.NotYetReadable, VerdictReason.TwoWithinError, Sizes(1, 0.9));
            Says(Verdict.NotYetReadable, VerdictReason.TwoBeyondErrorDown, Sizes(1, 0.5));
            Says(Verdict.Worsening, VerdictReason.RiseAboveBest, Sizes(1, 1.6));
        }

        [Fact]
        public void A_steady_fall_is_healing()
        {
            Trend trend = Sizes(1, 0.75, 0.55);
            Says(Verdict.Healing, VerdictReason.FallOfSlope, trend);
            Assert.Equal(Measure.LesionVolume, trend.Measure);
            Assert.Equal(-45, trend.ChangePercent!.Value, 8);
            Assert.Equal(Start, trend.Since);
        }

        [Fact]
        public void A_flat_course_is_no_progress()
        {
            Trend trend = Sizes(1, 1, 1);
            Says(Verdict.Stalled, VerdictReason.BelowAcceptableRate, trend);
            Assert.Equal(0, trend.Window!.LogPer60Days, 10);
        }

        [Fact]
        public void A_sure_fall_slower_than_acceptable_is_healing_slowly()
        {
            // Examinations a year apart make the slope sure: −0.05 log per 60 days against −0.15.
            Trend trend = Of(new[] { 1, 0.74, 0.55 }.Select((size, i) => Exam(360 * i, SixLevels(size))));
            Says(Verdict.HealingSlowly, VerdictReason.FallsTooSlowly, trend);
        }

        [Fact]
        public void A_rise_of_the_last_three_is_worsening() => Says(Verdict.Worsening, VerdictReason.RiseOfSlope, Sizes(1, 1.3, 1.7));

        [Fact]
        public void A_jump_above_the_best_is_worsening_though_the_last_three_do_not_rise()
        {
            // Best 0.4 at the third, then 1.2, 1.0, 1.0.
            Trend trend = Sizes(1, 0.7, 0.4, 1.2, 1.0, 1.0);
            Says(Verdict.Worsening, VerdictReason.RiseAboveBest, trend);
            Assert.Equal(Start.AddDays(120), trend.Since);
            Assert.Equal(150, trend.ChangePercent!.Value, 8);
        }

        [Fact]
        public void A_tenth_of_the_first_is_at_target() => Says(Verdict.AtTarget, VerdictReason.NotMeasurable, Sizes(1, 0.4, 0.09));

        [Fact]
        public void The_vet_sets_another_target()
        {
            CaseCourse course = Case(new[] { 1, 0.7, 0.4 }.Select((size, i) => Exam(60 * i, SixLevels(size)))) with
            {
                TargetFraction = 0.45,
            };
            Says(Verdict.AtTarget, VerdictReason.TargetReached, Analysed(course).Trend);
        }

        [Fact]
        public void Nothing_left_to_measure_is_at_target() => Says(Verdict.AtTarget, VerdictReason.NotMeasurable, Sizes(1, 0.3, 0));

        [Fact]
        public void A_small_rise_from_nothing_is_held_by_the_absolute_guard() =>
            Assert.NotEqual(Verdict.Worsening, Sizes(1, 0.3, 0, 0.02).Verdict);

        [Fact]
        public void The_verdict_speaks_of_the_last_three()
        {
            Trend trend = Sizes(1, 0.7, 0.5, 0.5, 0.5);
            Says(Verdict.Stalled, VerdictReason.BelowAcceptableRate, trend);
            Assert.Equal(3, trend.Window!.Examinations);
            Assert.Equal(5, trend.Course!.Examinations);
            Assert.Equal([false, false, true, true, true], trend.Series.Select(point => point.InWindow));
        }
    }

    public sealed class LongCourses
    {
        [Fact]
        public void A_course_of_many_years_has_the_rate_of_all_its_examinations()
        {
            // Halved every 600 days, an examination every 30 days: ln 2 / 10 in 60 days.
            Trend trend = Of(Enumerable.Range(0, 80).Select(visit => Exam(30 * visit, SixLevels(20 * Math.Pow(0.5, visit / 20.0)))));
            Assert.Equal(80, trend.Course!.Examinations);
            Assert.Equal(-Math.Log(2) / 10, trend.Course.LogPer60Days, 9);
        }
    }

    public sealed class MissedLevels
    {
        [Fact]
        public void Without_the_worst_level_healing_is_not_said() =>
            Says(
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead,
                Of(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55, without: 3)))
            );

        [Fact]
        public void Without_another_level_healing_is_still_said() =>
            Says(
                Verdict.Healing,
                VerdictReason.FallOfSlope,
                Of(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55, without: 5)))
            );

        [Fact]
        public void Without_any_lesion_level_the_target_is_not_reached() =>
            Says(
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead,
                Of(Exam(0, SixLevels()), Exam(60, SixLevels(0.4)), Exam(120, SixLevels(0.08, without: 4)))
            );

        [Fact]
        public void An_uncertain_link_of_the_worst_level_holds_healing_back()
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55)));
            Trend trend = Analysed(
                course,
                uncertain: place => place.Level.Position.Value == 18 && place.ExaminationId == course.Examinations[2].Id ? 0.6 : null
            ).Trend;
            Says(Verdict.NotYetReadable, VerdictReason.WorstLevelNotRead, trend);
            Assert.Equal([true, true, false], trend.Series.Select(point => point.Complete));
        }

        // The worst level is the first that was read, 10 cm.
        [Fact]
        public void The_uppermost_level_can_be_the_worst_that_holds_healing_back()
        {
            Reading[] Rows(double shrink) => [Row(10, 1.5, 0.5 * shrink), Row(14, 1.4, 0.3 * shrink), Row(18, 1.3, 0)];
            CaseCourse course = Case(Exam(0, Rows(1)), Exam(60, Rows(0.75)), Exam(120, Rows(0.55)));
            Says(Verdict.Healing, VerdictReason.FallOfSlope, Analysed(course).Trend);
            Says(
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead,
                Analysed(
                    course,
                    uncertain: place => place.Level.Position.Value == 10 && place.ExaminationId == course.Examinations[2].Id ? 0.6 : null
                ).Trend
            );
            Says(
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead,
                Of(Exam(0, Rows(1)), Exam(60, Rows(0.75)), Exam(120, Rows(0.55).Skip(1)))
            );
        }

        [Fact]
        public void An_uncertain_link_of_the_level_that_is_the_worst_now_holds_healing_back_though_a_free_level_was_not_read()
        {
            // Level 14 was small and is the largest now; nobody read level 10, which was always free of lesion.
            CaseCourse course = Case(
                Exam(0, SixLevels()),
                Exam(60, SixLevels(0.7)),
                Exam(120, Row(14, 1.3, 0.2), Row(18, 1.5, 0.1), Row(22, 1.4, 0.06), Row(26, 1.3, 0), Row(30, 1.2, 0))
            );
            Says(Verdict.Healing, VerdictReason.FallOfSlope, Analysed(course).Trend);
            Says(
                Verdict.NotYetReadable,
                VerdictReason.WorstLevelNotRead,
                Analysed(
                    course,
                    uncertain: place => place.Level.Position.Value == 14 && place.ExaminationId == course.Examinations[2].Id ? 0.85 : null
                ).Trend
            );
        }

        [Fact]
        public void A_missed_worst_level_holds_no_caution_back() =>
            Says(
                Verdict.Worsening,
                VerdictReason.RiseOfSlope,
                Of(Exam(0, SixLevels()), Exam(60, SixLevels(1.4)), Exam(120, SixLevels(1.9, without: 3)))
            );
    }

    public sealed class Start_of_the_trend
    {
        [Fact]
        public void The_acute_phase_is_left_out_by_date()
        {
            // Onset on day 0: day 27 lies inside the 28 days, day 28 does not.
            CaseCourse course = Case(
                Exam(27, SixLevels(3)),
                Exam(28, SixLevels()),
                Exam(88, SixLevels(0.75)),
                Exam(148, SixLevels(0.55))
            ) with
            {
                Onset = Start,
            };
            Trend trend = Analysed(course).Trend;
            Assert.Equal([false, true, true, true], trend.Series.Select(point => point.InTrend));
            Assert.Equal(3, trend.Course!.Examinations);
        }

        [Fact]
        public void Only_acute_examinations_say_so() =>
            Says(
                Verdict.NotYetReadable,
                VerdictReason.AcutePhase,
                Analysed(Case(Exam(5, SixLevels()), Exam(15, SixLevels(2))) with { Onset = Start }).Trend
            );

        [Fact]
        public void A_reinjury_starts_it_anew()
        {
            CaseCourse course = Case(Enumerable.Range(0, 5).Select(i => Exam(60 * i, SixLevels()))) with { Reinjury = Start.AddDays(100) };
            Assert.Equal([false, false, false, true, true], Analysed(course).Trend.Series.Select(point => point.InTrend));
        }

        [Fact]
        public void A_reinjury_after_the_date_asked_about_is_not_known_yet()
        {
            CaseCourse course = Case(Exam(0, SixLevels())) with { Onset = null, Reinjury = Start.AddDays(100) };
            Assert.Null(TrendStart.Of(course, new TrendSettings(), Start.AddDays(99)));
            Assert.Equal(Start.AddDays(128), TrendStart.Of(course, new TrendSettings(), Start.AddDays(100)));
        }

        [Fact]
        public void An_unknown_onset_starts_at_the_first_examination() =>
            Assert.All(
                Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels())) with { Onset = null }).Trend.Series,
                point => Assert.True(point.InTrend)
            );

        [Fact]
        public void Only_the_stance_of_most_examinations_counts()
        {
            CaseCourse course = Case(
                Exam(0, SixLevels()),
                Exam(60, SixLevels(2)) with
                {
                    Stance = Stance.NonWeightBearing,
                },
                Exam(120, SixLevels(0.75)),
                Exam(180, SixLevels(0.55))
            );
            Trend trend = Analysed(course).Trend;
            Assert.Equal([true, false, true, true], trend.Series.Select(point => point.InTrend));
            Assert.Equal(Verdict.Healing, trend.Verdict);
        }

        [Fact]
        public void On_a_tie_the_weight_bearing_stance_counts()
        {
            CaseCourse course = Case(Exam(0, SixLevels()) with { Stance = Stance.NonWeightBearing }, Exam(60, SixLevels()));
            Assert.Equal([false, true], Analysed(course).Trend.Series.Select(point => point.InTrend));
        }
    }

    public sealed class Speaking_measure
    {
        [Fact]
        public void One_level_speaks_by_its_area()
        {
            Trend trend = Of(new[] { 0.9, 0.7, 0.5 }.Select((area, i) => Exam(60 * i, Row(18, 1.5, area))));
            Assert.Equal(Measure.LesionArea, trend.Measure);
            Assert.Equal(Verdict.Healing, trend.Verdict);
        }

        [Fact]
        public void Shares_alone_speak_for_themselves()
        {
            Trend trend = Of(
                new double[] { 40, 30, 20 }.Select(
                    (share, i) =>
                        Exam(60 * i, Row(16) with { LesionPercent = new Percent(5) }, Row(18) with { LesionPercent = new Percent(share) })
                )
            );
            Assert.Equal(Measure.LesionPercent, trend.Measure);
            Assert.Equal(Verdict.Healing, trend.Verdict);
            Assert.Equal([40, 30, 20], trend.Series.Select(point => point.Value));
        }

        [Theory]
        [InlineData(1.0, 1.0, 1.0, Verdict.NotYetReadable, VerdictReason.NoReference)]
        [InlineData(1.0, 1.15, 1.3, Verdict.Worsening, VerdictReason.RiseOfSlope)]
        [InlineData(1.3, 1.15, 1.0, Verdict.Healing, VerdictReason.FallOfSlope)]
        public void Thickness_has_no_rate_and_so_no_stall(double first, double second, double third, Verdict verdict, VerdictReason reason)
        {
            Trend trend = Of(
                new[] { first, second, third }.Select((size, i) => Exam(60 * i, Row(18) with { Thickness = new Centimetres(size) }))
            );
            Assert.Equal(Measure.Thickness, trend.Measure);
            Says(verdict, reason, trend);
        }

        [Fact]
        public void Fibre_grades_settle_it_only_beyond_chance()
        {
            // Exact two-sided p .0667 for 3 3 2 1 1; 2 of 90 orders for 3 3 2 2 1 1: .022.
            Says(Verdict.NotYetReadable, VerdictReason.GradesUndecided, Of(Fibre(3, 3, 2, 1, 1)));
            Says(Verdict.Healing, VerdictReason.GradesBetter, Of(Fibre(3, 3, 2, 2, 1, 1)));
            Says(Verdict.Worsening, VerdictReason.GradesWorse, Of(Fibre(0, 1, 2, 3)));
        }

        [Fact]
        public void Echogenicity_is_never_the_only_ground() =>
            Says(
                Verdict.NotYetReadable,
                VerdictReason.GradesUndecided,
                Of(
                    new[] { 3, 3, 2, 2, 1, 1, 0 }.Select(
                        (grade, i) => Exam(60 * i, Row(18) with { Echogenicity = new Grade(GradeScales.Echogenicity0To3, grade) })
                    )
                )
            );

        [Fact]
        public void A_ligament_without_a_lesion_does_not_stand_at_target()
        {
            Trend trend = Of(
                Enumerable.Range(0, 3).Select(i => Exam(60 * i, Row(16, 1.5, 0) with { Thickness = new Centimetres(1.2) }, Row(18, 1.5, 0)))
            );
            Assert.Equal(Measure.Thickness, trend.Measure);
            Assert.Equal(Verdict.NotYetReadable, trend.Verdict);
        }

        [Fact]
        public void The_worst_level_is_the_largest_on_average_not_the_largest_once()
        {
            // One level a path, so no volume: the body was largest once, the branch is on average, and it stays.
            Trend trend = Of(
                new[] { 0.70, 0.30, 0.30 }.Select((body, i) => Exam(60 * i, Row(16, 1.5, body), Row(22, 1.5, 0.60, Part.MedialBranch)))
            );
            Assert.Equal(Measure.LesionArea, trend.Measure);
            Assert.Equal([0.60, 0.60, 0.60], trend.Series.Select(point => point.Value));
            Says(Verdict.Stalled, VerdictReason.BelowAcceptableRate, trend);
        }

        private static IEnumerable<Examination> Fibre(params int[] grades) =>
            grades.Select((grade, i) => Exam(60 * i, Row(18) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) }));
    }

    public sealed class Figures
    {
        [Fact]
        public void The_decision_rests_on_the_known_error_and_the_interval_on_the_moderated_one()
        {
            Trend trend = Of(
                new[] { 0.90, 0.72, 0.61, 0.47, 0.40 }.Select((area, i) => Exam(60 * i, Row(18, 1.5, area))),
                new AnalysisSettings
                {
                    Error = new MeasurementErrorSettings
                    {
                        LesionAreaCv = 0.08,
                        AreaFloorCm2 = 1e-6,
                        SharedGainLog = 0,
                    },
                }
            );
            // Series S: with the floor gone the working scale is the logarithm.
            Assert.Equal(60 * -0.00341396491623109, trend.Course!.LogPer60Days, 6);
            Assert.Equal(-22.333, trend.Course.Lower95Percent, 0.001);
            Assert.Equal(-18.522, trend.Course.RatePercent, 0.001);
            Assert.Equal(-14.524, trend.Course.Upper95Percent, 0.001);
        }

        [Fact]
        public void Another_measurer_widens_the_error()
        {
            IEnumerable<Reading> By(string name, double size) => SixLevels(size).Select(reading => reading with { Measurer = name });
            SlopeFigures same = Of(Exam(0, By("Ada", 1)), Exam(60, By("Ada", 0.75)), Exam(120, By("ada", 0.55))).Window!;
            SlopeFigures other = Of(Exam(0, By("Ada", 1)), Exam(60, By("Ada", 0.75)), Exam(120, By("Ben", 0.55))).Window!;
            Assert.True(other.StandardError > 1.1 * same.StandardError);
        }

        [Fact]
        public void One_more_examination_settles_two_that_fall_steadily() => Assert.Equal(1, Sizes(1, 0.7).MoreExaminationsToSettle);

        [Fact]
        public void A_course_between_no_progress_and_healing_cannot_say_how_many()
        {
            Trend trend = Sizes(1, 0.9, 0.81);
            Says(Verdict.NotYetReadable, VerdictReason.Undecided, trend);
            Assert.Null(trend.MoreExaminationsToSettle);
        }

        // By hand, with one error s at every size: three examinations 60 days apart have the slope (y3 − y1)/2 with the error s/√2, so healing
        // needs a fall of 1.6447·s. Carried on along its line, the course 0, a, b has the slopes (2b − a)/3 and a/6 + 5b/12 over its next
        // two windows: for a = −2.2·s and b = −3.2·s these are −1.6·s now, then −1.4·s and −1.70·s.
        [Fact]
        public void Two_more_examinations_settle_a_course_whose_early_step_leaves_the_window_at_the_second() =>
            Assert.Equal(2, Logs(0.12, [0, -2.2 * 0.12, -3.2 * 0.12], 0.1).MoreExaminationsToSettle);

        // By hand: −.35 each time with s = .3 lies within 1.6447·s and above no rate that can be told, however long it goes on. It reaches a
        // target of e^−1.61 = .2 at −1.75, three examinations on, one of e^−1.90 = .15 at −2.10, four on, and a tenth at −2.45, five on.
        [Theory]
        [InlineData(0.2, 3)]
        [InlineData(0.15, 4)]
        [InlineData(0.1, null)]
        public void The_target_settles_it_too_up_to_four_examinations_on(double target, int? more)
        {
            Trend trend = Logs(0.3, [0, -0.35, -0.7], target);
            Says(Verdict.NotYetReadable, VerdictReason.Undecided, trend);
            Assert.Equal(more, trend.MoreExaminationsToSettle);
        }

        [Fact]
        public void A_thickness_without_reference_can_be_settled_by_its_fall_alone()
        {
            // s = .05 on the working scale; −.08 a visit: 3 points need 1.6447·s = .0822, 4 points with a window of four less.
            Trend trend = Analysed(
                Case(
                    new[] { 1.0, Math.Exp(-0.08), Math.Exp(-0.16) }.Select(
                        (size, i) => Exam(60 * i, Row(18) with { Thickness = new Centimetres(size) })
                    )
                ),
                new AnalysisSettings
                {
                    Error = new MeasurementErrorSettings { ThicknessCv = 0.05, LengthFloorCm = 1e-6 },
                    Trend = new TrendSettings { WindowExaminations = 4 },
                }
            ).Trend;
            Says(Verdict.NotYetReadable, VerdictReason.NoReference, trend);
            Assert.Equal(1, trend.MoreExaminationsToSettle);
        }

        /// <summary>One level whose area has the logarithms given, each with the standard deviation given.</summary>
        private static Trend Logs(double deviation, double[] logs, double target) =>
            Analysed(
                Case(logs.Select((log, i) => Exam(60 * i, Row(18, 1.5, 0.9 * Math.Exp(log))))) with
                {
                    TargetFraction = target,
                },
                new AnalysisSettings
                {
                    Error = new MeasurementErrorSettings
                    {
                        LesionAreaCv = deviation,
                        AreaFloorCm2 = 1e-6,
                        SharedGainLog = 0,
                    },
                }
            ).Trend;

        [Fact]
        public void Two_examinations_of_one_day_make_no_rate()
        {
            Examination second = Exam(0, SixLevels(0.9)) with { Id = "second", Name = "second" };
            Trend trend = Of(Exam(0, SixLevels()), second);
            Assert.Null(trend.Window);
            Assert.Equal(Verdict.NotYetReadable, trend.Verdict);
        }
    }

    public sealed class Lesions
    {
        [Fact]
        public void Each_lesion_has_its_own_trend()
        {
            IEnumerable<Reading> At(double a, double b) =>
                [
                    Row(10, 1.2, 0, name: "A"),
                    Row(12, 1.2, a, name: "A"),
                    Row(14, 1.2, 0, name: "A"),
                    Row(20, 1.2, 0, name: "B"),
                    Row(22, 1.2, b, name: "B"),
                    Row(24, 1.2, 0, name: "B"),
                ];
            CaseAnalysis analysis = Analysed(Case(Exam(0, At(0.6, 0.3)), Exam(60, At(0.4, 0.4)), Exam(120, At(0.25, 0.55))));
            Assert.Equal(["A", "B"], analysis.Lesions.Select(lesion => lesion.Lesion));
            Assert.Equal([Verdict.Healing, Verdict.Worsening], analysis.Lesions.Select(lesion => lesion.Trend.Verdict));
            Assert.Equal(1.2, analysis.Lesions[0].Trend.Series[0].Value, 10);
            Assert.All(analysis.Lesions, lesion => Assert.Equal(Part.Body, lesion.Part));
        }

        [Fact]
        public void Two_lesions_at_one_level_share_one_ligament_area()
        {
            CaseAnalysis analysis = Analysed(
                Case(Exam(0, Row(12, 1.2, 0.2, name: "A"), Row(12, 1.2, 0.1, name: "B"), Row(14, 1.2, 0), Row(10, 1.2, 0)))
            );
            Assert.Equal(25, analysis.Burdens[0].WorstPercent!.Value.Value, 10);
            Assert.Equal(100 * 0.3 / 3.6, analysis.Burdens[0].TotalPercent!.Value.Value, 10);
            Assert.Equal([0.4, 0.2], analysis.Lesions.Select(lesion => Math.Round(lesion.Trend.Series[0].Value, 10)));
        }

        [Fact]
        public void One_lesion_has_the_trend_of_the_case()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55))));
            Assert.Same(analysis.Trend, analysis.Lesions.Single().Trend);
        }
    }

    private static Trend Of(IEnumerable<Examination> examinations, AnalysisSettings settings) =>
        Analysed(Case(examinations), settings).Trend;

    private static void Says(Verdict verdict, VerdictReason reason, Trend trend) =>
        Assert.Equal((verdict, reason), (trend.Verdict, trend.Reason));
}
