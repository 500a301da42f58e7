using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

/// <summary>Cases in which only shares, only thicknesses or only grades were recorded: burden, verdict and findings, by part and lesion.</summary>
public sealed class SingleMeasureTests
{
    private static Reading Share(double level, double percent, Part part = Part.Body, string? name = null) =>
        Row(level, part: part, name: name) with
        {
            LesionPercent = new Percent(percent),
        };

    private static Reading Graded(double level, int fibre, ReadingRole role = ReadingRole.Worst, Part part = Part.Body) =>
        Row(level, part: part) with
        {
            FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, fibre),
            Role = role,
        };

    private static Reading Thick(double level, double thickness, Part part = Part.Body) =>
        Row(level, part: part) with
        {
            Thickness = new Centimetres(thickness),
        };

    private static FindingKind[] Told(CaseAnalysis analysis) => [.. analysis.Findings.Select(finding => finding.Kind)];

    public sealed class Shares
    {
        [Fact]
        public void Have_a_worst_level_and_a_length_and_no_volume_total_or_class()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, Share(14, 0), Share(16, 12), Share(18, 30), Share(20, 0)))).Burdens.Single();

            Assert.Equal((30, 18), (burden.WorstPercent!.Value.Value, burden.WorstLevel!.Value.Position.Value));
            // Half a gap on both sides of 16 … 18.
            Assert.Equal(4, burden.LesionLength!.Value.Value, 12);
            Assert.Equal((null, null, null), (burden.Volume, burden.TotalPercent, burden.Severity));
        }

        [Fact]
        public void A_level_of_no_share_that_has_one_now_is_newly_abnormal()
        {
            CaseAnalysis analysis = Analysed(
                Case(Exam(0, Share(16, 0), Share(18, 30), Share(20, 0)), Exam(60, Share(16, 20), Share(18, 28), Share(20, 0)))
            );

            Finding found = Assert.Single(analysis.Findings, finding => finding.Kind == FindingKind.NewlyAbnormalLevel);
            Assert.Equal((FindingSeverity.Red, 16.0), (found.Severity, found.Level!.Value.Position.Value));
        }

        [Fact]
        public void A_worst_level_that_two_examinations_left_out_still_forbids_healing()
        {
            CaseCourse course = Case(
                Exam(0, Share(16, 20), Share(18, 40)),
                Exam(60, Share(16, 15), Share(18, 35)),
                Exam(120, Share(16, 10)),
                Exam(180, Share(16, 6))
            );
            CaseAnalysis analysis = Analysed(course);

            Assert.Equal((Verdict.NotYetReadable, VerdictReason.WorstLevelNotRead), (analysis.Trend.Verdict, analysis.Trend.Reason));
            Finding missed = Assert.Single(analysis.Findings, finding => finding.Kind == FindingKind.LesionLevelMissed);
            Assert.Equal(Start.AddDays(60), missed.ComparedWith);
        }

        [Fact]
        public void A_share_far_above_the_best_so_far_is_worsening_and_one_inside_the_guard_is_not()
        {
            // The guard of an area, .05 cm², in a ligament of 1 cm²: 5 %.
            Trend rise = Analysed(Case(Exam(0, Share(18, 20)), Exam(60, Share(18, 40)))).Trend;
            AnalysisSettings sharp = new()
            {
                Error = new MeasurementErrorSettings
                {
                    LesionAreaCv = 0.001,
                    AreaFloorCm2 = 0.0001,
                    LigamentAreaCv = 0.001,
                },
            };
            Trend above = Analysed(Case(Exam(0, Share(18, 20)), Exam(60, Share(18, 26))), sharp).Trend;
            Trend inside = Analysed(Case(Exam(0, Share(18, 20)), Exam(60, Share(18, 24))), sharp).Trend;

            Assert.Equal(
                (Measure.LesionPercent, Verdict.Worsening, VerdictReason.RiseAboveBest),
                (rise.Measure!.Value, rise.Verdict, rise.Reason)
            );
            Assert.Equal(Verdict.Worsening, above.Verdict);
            Assert.Equal(Verdict.NotYetReadable, inside.Verdict);
        }

        [Fact]
        public void A_small_share_that_was_left_out_is_not_taken_for_the_worst_level()
        {
            // 20 % of a ligament is less than an area of .45 cm²; 60 % is more.
            Assert.Equal(Verdict.Healing, WithoutShare(20).Verdict);
            Assert.Equal((Verdict.NotYetReadable, VerdictReason.WorstLevelNotRead), (WithoutShare(60).Verdict, WithoutShare(60).Reason));

            static Trend WithoutShare(double share) =>
                Analysed(
                    Case(
                        Exam(0, Row(18, 1.5, 0.60), Share(24, share)),
                        Exam(60, Row(18, 1.5, 0.45), Share(24, share)),
                        Exam(120, Row(18, 1.5, 0.25))
                    )
                ).Trend;
        }

        [Fact]
        public void Each_lesion_and_part_has_its_own_trend()
        {
            CaseAnalysis analysis = Analysed(
                Case(
                    new[] { (40.0, 10.0), (28, 20), (20, 35) }.Select(
                        (shares, visit) => Exam(60 * visit, Share(18, shares.Item1, Part.Body), Share(24, shares.Item2, Part.MedialBranch))
                    )
                )
            );

            Assert.Equal(
                [(Part.Body, Measure.LesionPercent, Verdict.Healing), (Part.MedialBranch, Measure.LesionPercent, Verdict.Worsening)],
                analysis.Lesions.Select(lesion => (lesion.Part, lesion.Trend.Measure!.Value, lesion.Trend.Verdict))
            );
        }
    }

    public sealed class Grades
    {
        private static CaseCourse Triplets(params int[] worst) =>
            Case(
                worst.Select(
                    (grade, visit) =>
                        Exam(60 * visit, Graded(16, 0, ReadingRole.NormalAbove), Graded(18, grade), Graded(20, 0, ReadingRole.NormalBelow))
                )
            );

        [Fact]
        public void Of_triplets_settle_it_beyond_chance_and_no_level_counts_as_missed()
        {
            CaseAnalysis analysis = Analysed(Triplets(3, 3, 2, 2, 1, 1));

            Assert.Equal((Measure.Grades, Verdict.Healing), (analysis.Trend.Measure!.Value, analysis.Trend.Verdict));
            Assert.DoesNotContain(FindingKind.LesionLevelMissed, Told(analysis));
            Assert.Empty(analysis.Burdens[^1].LesionTracksMissed);
            Assert.Equal(1, analysis.Burdens[^1].FibreAlignmentSum);
        }

        [Fact]
        public void Settle_it_at_the_very_probability_that_is_set()
        {
            // Of the 24 orders of four values, one rises and one falls throughout: two sides, 1/12.
            Assert.Equal(Verdict.Healing, At(1.0 / 12));
            Assert.Equal(Verdict.NotYetReadable, At(0.083));

            static Verdict At(double probability) =>
                Analysed(
                    Case(new[] { 3, 2, 1, 0 }.Select((grade, visit) => Exam(60 * visit, Graded(18, grade)))),
                    new AnalysisSettings { Trend = new TrendSettings { GradesProbability = probability } }
                ).Trend.Verdict;
        }

        [Fact]
        public void Settle_it_though_another_level_was_not_graded()
        {
            CaseCourse whole = Triplets(3, 3, 2, 2, 1, 1);
            CaseCourse course = whole with
            {
                Examinations =
                [
                    .. whole.Examinations.Select(examination =>
                        examination with
                        {
                            Readings = [.. examination.Readings, Row(26, 1.2) with { Id = $"{examination.Id}/sound" }],
                        }
                    ),
                ],
            };

            Assert.Equal((Measure.Grades, Verdict.Healing), (Analysed(course).Trend.Measure!.Value, Analysed(course).Trend.Verdict));
        }

        [Fact]
        public void That_fell_beyond_chance_are_no_healing_where_the_latest_examination_left_out_the_worst_level()
        {
            CaseCourse whole = Triplets(3, 3, 2, 2, 1, 1, 1);
            CaseCourse course = whole with
            {
                Examinations =
                [
                    .. whole.Examinations.Take(6),
                    whole.Examinations[6] with
                    {
                        Readings = [.. whole.Examinations[6].Readings.Where(reading => reading.Role != ReadingRole.Worst)],
                    },
                ],
            };
            Trend trend = Analysed(course).Trend;

            Assert.Equal(Verdict.Healing, Analysed(whole).Trend.Verdict);
            Assert.Equal(
                (Measure.Grades, Verdict.NotYetReadable, VerdictReason.WorstLevelNotRead),
                (trend.Measure!.Value, trend.Verdict, trend.Reason)
            );
        }

        [Fact]
        public void Are_not_read_where_the_worst_level_was_left_out()
        {
            CaseCourse whole = Triplets(3, 3, 2, 2, 1, 1);
            CaseCourse course = whole with
            {
                Examinations =
                [
                    .. whole.Examinations.Take(5),
                    whole.Examinations[5] with
                    {
                        Readings = [.. whole.Examinations[5].Readings.Where(reading => reading.Role != ReadingRole.Worst)],
                    },
                ],
            };
            CaseAnalysis analysis = Analysed(course);

            Assert.Equal(Verdict.NotYetReadable, analysis.Trend.Verdict);
            Assert.All(analysis.Burdens, burden => Assert.Null(burden.Volume));
            Assert.Contains(FindingKind.LesionLevelMissed, Told(analysis));
        }

        [Fact]
        public void Once_a_size_was_read_a_grade_alone_no_longer_reads_the_level()
        {
            CaseAnalysis analysis = Analysed(
                Case(Exam(0, Row(18, 1.5, 0.5) with { Role = ReadingRole.Worst }), Exam(60, Graded(18, 1)), Exam(120, Graded(18, 1)))
            );

            Assert.Contains(FindingKind.LesionLevelMissed, Told(analysis));
        }

        [Fact]
        public void A_normal_level_of_the_triplet_that_is_the_worst_now_is_newly_abnormal()
        {
            CaseAnalysis analysis = Analysed(
                Case(
                    Exam(0, Graded(16, 0, ReadingRole.NormalAbove), Graded(18, 3), Graded(20, 0, ReadingRole.NormalBelow)),
                    Exam(60, Graded(16, 3), Graded(18, 2), Graded(20, 0, ReadingRole.NormalBelow))
                )
            );

            Assert.Contains(FindingKind.NewlyAbnormalLevel, Told(analysis));
        }
    }

    public sealed class Thicknesses
    {
        [Fact]
        public void Alone_give_no_burden_and_a_verdict_of_the_thickest_level()
        {
            CaseAnalysis analysis = Analysed(
                Case(new[] { 1.6, 1.4, 1.2 }.Select((worst, visit) => Exam(60 * visit, Thick(16, 1.0), Thick(18, worst))))
            );
            ExaminationBurden burden = analysis.Burdens[0];

            Assert.Equal((null, null, null, null), (burden.Volume, burden.TotalPercent, burden.WorstPercent, burden.LesionLength));
            Assert.Equal((Measure.Thickness, Verdict.Healing), (analysis.Trend.Measure!.Value, analysis.Trend.Verdict));
            Assert.Equal([1.6, 1.4, 1.2], analysis.Trend.Series.Select(point => point.Value));
        }

        /// <summary>One level read before the injury and three times after its acute phase.</summary>
        private static CaseCourse AfterInjury(Reading before, params double[] after) =>
            Case([Exam(0, before), .. after.Select((thickness, visit) => Exam(100 + (60 * visit), Thick(18, thickness)))]) with
            {
                Onset = Start.AddDays(30),
            };

        // Excess .8 .4 .2 cm over 1.0 cm before the injury: halved each time.
        [Fact]
        public void Above_its_own_sound_size_a_thickness_can_be_healing()
        {
            CaseAnalysis analysis = Analysed(AfterInjury(Thick(18, 1.0), 1.8, 1.4, 1.2));

            Assert.Equal((Measure.ThicknessAboveOwn, Verdict.Healing), (analysis.Trend.Measure!.Value, analysis.Trend.Verdict));
            Assert.Equal([0, 0.8, 0.4, 0.2], analysis.Trend.Series.Select(point => Math.Round(point.Value, 10)));
            Assert.Equal([false, true, true, true], analysis.Trend.Series.Select(point => point.InTrend));
            Assert.Equal(1, Assert.Single(analysis.Findings, finding => finding.Kind == FindingKind.BeforeInjury).Count);
            Assert.DoesNotContain(FindingKind.AcutePhaseLeftOut, Told(analysis));
        }

        [Fact]
        public void Above_its_own_sound_size_a_thickness_that_stays_shows_no_progress() =>
            Assert.Equal(Verdict.Stalled, Analysed(AfterInjury(Thick(18, 1.0), 2.2, 2.2, 2.2)).Trend.Verdict);

        [Fact]
        public void A_level_that_showed_a_lesion_before_was_not_sound() =>
            Assert.NotEqual(
                Measure.ThicknessAboveOwn,
                Analysed(AfterInjury(Thick(18, 1.0) with { LesionPercent = new Percent(20) }, 2.2, 2.2, 2.2)).Trend.Measure
            );

        [Fact]
        public void Without_a_date_of_injury_no_examination_is_a_sound_one() =>
            Assert.Equal(Measure.Thickness, Analysed(AfterInjury(Thick(18, 1.0), 2.2, 2.2, 2.2) with { Onset = null }).Trend.Measure);

        [Fact]
        public void The_other_sound_limb_comes_before_its_own_size()
        {
            CaseCourse course = AfterInjury(Thick(18, 1.0) with { OtherLimbThickness = new Centimetres(1.1) }, 1.9, 1.5, 1.3);

            Assert.Equal(Measure.ThicknessExcess, Analysed(course).Trend.Measure);
            Assert.Equal(Measure.ThicknessAboveOwn, Analysed(course with { OtherLimb = OtherLimb.HasLesion }).Trend.Measure);
        }
    }
}
