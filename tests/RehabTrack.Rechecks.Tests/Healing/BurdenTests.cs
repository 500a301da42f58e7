using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Simulation.Cases;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Healing;

public sealed class BurdenTests
{
    public sealed class Percents
    {
        [Fact]
        public void Six_levels_give_the_total_of_all_levels_and_its_class()
        {
            // ECM 330: 100·0.90/7.90; SAEVA 191: mild.
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels()))).Burdens.Single();
            Assert.Equal(100 * 0.90 / 7.90, burden.TotalPercent!.Value.Value, 10);
            Assert.Equal(11.4, burden.TotalPercent!.Value.Value, 1);
            Assert.True(burden.LevelsComplete);
            Assert.Equal(new SeverityGrade("total-percent", 1), burden.Severity);
            Assert.Equal(30, burden.WorstPercent!.Value.Value, 10);
            Assert.Equal(18, burden.WorstLevel!.Value.Position.Value);
        }

        [Fact]
        public void Lesion_free_levels_left_empty_do_not_make_16_4_percent()
        {
            // Arithmetic of the worked table: 0.90/5.50 would be 16.4 %.
            IEnumerable<Reading> readings = SixLevels()
                .Select(reading =>
                    reading.LesionArea.MeasuredArea?.Value == 0 ? reading with { LesionArea = LesionArea.Unknown } : reading
                );
            ExaminationBurden burden = Analysed(Case(Exam(0, readings))).Burdens.Single();
            Assert.Null(burden.TotalPercent);
            Assert.Null(burden.Severity);
            Assert.False(burden.LevelsComplete);
        }

        [Fact]
        public void Lesion_free_levels_left_empty_at_the_ends_of_a_triplet_count_as_none()
        {
            IEnumerable<Reading> readings = SixLevels()
                .Select(reading =>
                    reading.LesionArea.MeasuredArea?.Value == 0
                        ? reading with
                        {
                            LesionArea = LesionArea.Unknown,
                            Role = reading.Level.Position.Value < 20 ? ReadingRole.NormalAbove : ReadingRole.NormalBelow,
                        }
                        : reading
                );
            Assert.Equal(100 * 0.90 / 7.90, Analysed(Case(Exam(0, readings))).Burdens.Single().TotalPercent!.Value.Value, 10);
        }

        [Fact]
        public void Levels_that_all_show_lesion_give_no_class_and_are_called_incomplete()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels().Where(reading => reading.LesionArea.Area.Value > 0))))
                .Burdens.Single();
            Assert.False(burden.LevelsComplete);
            Assert.Null(burden.Severity);
            Assert.True(burden.VolumeIsLowerBound);
        }

        // Read at two examinations or more: one that only a single one of three or four added is not followed.
        [Theory]
        [InlineData(3)]
        [InlineData(4)]
        public void A_level_that_one_of_several_examinations_added_leaves_the_others_complete(int count)
        {
            IEnumerable<Examination> visits = Enumerable
                .Range(0, count)
                .Select(visit => Exam(60 * visit, visit == 1 ? SixLevels().Append(Row(34, 1.2, 0)) : SixLevels()));
            Assert.All(Analysed(Case(visits)).Burdens, burden => Assert.True(burden.LevelsComplete));
        }

        [Fact]
        public void Four_levels_are_the_fewest_that_give_a_class()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, Row(12, 1.3, 0), Row(16, 1.5, 0.45), Row(20, 1.4, 0), Row(24, 1.4, 0))))
                .Burdens.Single();
            Assert.Equal(new SeverityGrade("total-percent", 1), burden.Severity);
        }

        [Fact]
        public void A_level_without_a_ligament_area_makes_the_examination_incomplete_and_leaves_the_total()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels().Append(Row(34, null, 0))))).Burdens.Single();
            Assert.Equal(100 * 0.90 / 7.90, burden.TotalPercent!.Value.Value, 10);
            Assert.False(burden.LevelsComplete);
        }

        // A ligament area of 0 is a slip of the pen: its lesion has nothing to be a share of.
        [Fact]
        public void A_ligament_area_of_zero_does_not_enter_the_total() =>
            Assert.Equal(
                100 * 0.90 / 7.90,
                Analysed(Case(Exam(0, SixLevels().Append(Row(34, 0, 0.1))))).Burdens.Single().TotalPercent!.Value.Value,
                10
            );

        [Fact]
        public void A_lesion_that_reaches_the_end_of_one_path_makes_the_whole_incomplete()
        {
            Reading[] branch = [Row(20, 0.8, 0, Part.MedialBranch), Row(22, 0.8, 0.2, Part.MedialBranch)];
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels().Concat(branch))));
            Assert.False(analysis.Burdens.Single().LevelsComplete);
            Assert.Equal([true, false], analysis.Parts.Select(part => part.Burdens.Single().LevelsComplete));
        }

        // A long-axis row of the same level adds nothing and takes nothing away.
        [Fact]
        public void A_level_read_in_both_planes_counts_as_read_across()
        {
            Reading along = Row(18) with { Id = "along", Plane = ImagePlane.LongAxis };
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels().Append(along)))).Burdens.Single();
            Assert.Equal(100 * 0.90 / 7.90, burden.TotalPercent!.Value.Value, 10);
            Assert.True(burden.LevelsComplete);
        }

        [Fact]
        public void A_triplet_alone_gives_no_class()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, Row(12, 1.3, 0), Row(16, 1.5, 0.45), Row(20, 1.4, 0)))).Burdens.Single();
            Assert.Null(burden.Severity);
            Assert.NotNull(burden.TotalPercent);
        }

        [Fact]
        public void A_level_followed_and_not_read_makes_the_examination_incomplete()
        {
            ExaminationBurden[] burdens =
            [
                .. Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(without: 1)), Exam(120, SixLevels()))).Burdens,
            ];
            Assert.Equal([true, false, true], burdens.Select(burden => burden.LevelsComplete));
            Assert.Null(burdens[1].Severity);
        }

        [Fact]
        public void Among_three_examinations_an_inner_level_left_out_makes_one_incomplete() =>
            Assert.Equal(
                [true, true, false],
                Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels()), Exam(120, SixLevels(without: 3))))
                    .Burdens.Select(burden => burden.LevelsComplete)
            );

        [Fact]
        public void A_level_that_only_the_second_examination_added_leaves_the_first_complete() =>
            Assert.Equal(
                [true, true],
                Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels().Append(Row(34, 1.2, 0)))))
                    .Burdens.Select(burden => burden.LevelsComplete)
            );

        [Fact]
        public void A_sound_ligament_has_a_largest_share_of_none_and_no_worst_level()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels(0)))).Burdens.Single();

            Assert.Equal(0, burden.WorstPercent!.Value.Value);
            Assert.Null(burden.WorstLevel);
        }

        [Fact]
        public void Of_two_levels_of_the_same_share_the_one_higher_up_is_named_and_the_body_before_a_branch()
        {
            Reading[] branch = [Row(20, 1, 0.3, Part.MedialBranch), Row(24, 1, 0.3, Part.MedialBranch)];
            Reading[] body = [Row(22, 1, 0.3), Row(26, 1, 0.3)];

            Assert.Equal(20, Worst(branch));
            Assert.Equal(22, Worst([.. branch, .. body]));
            Assert.Equal(22, Worst([.. body.Reverse(), .. branch.Reverse()]));

            static double Worst(Reading[] readings) => Analysed(Case(Exam(0, readings))).Burdens.Single().WorstLevel!.Value.Position.Value;
        }

        [Fact]
        public void The_ends_of_an_examination_are_those_of_its_own_tape()
        {
            // A person may hold the lowest level of this day for a place that the others have near the top; on this day it is the lowest.
            CaseCourse course = Case(Exam(0, SixLevels()));
            LinkedCourse crossed = TrueLinks.Of(
                course,
                place => place.Level.Position.Value == 30 ? 16 : place.Level.Position.Value,
                position => new Centimetres(position)
            );

            ExaminationBurden burden = CaseAnalyser.AnalyseLinked(course, crossed, new AnalysisSettings(), Start).Burdens.Single();

            Assert.True(burden.LevelsComplete);
            Assert.Equal(new SeverityGrade(SeverityScales.TotalPercent, 1), burden.Severity);
        }

        [Fact]
        public void A_branch_is_classed_by_its_worst_section()
        {
            // Boado 2025: 0.35/0.70 = 50 % is class 2.
            ExaminationBurden burden = Analysed(
                Case(Exam(0, Row(20, 0.70, 0.35, Part.MedialBranch), Row(22, 0.70, 0.10, Part.MedialBranch)))
            )
                .Burdens.Single();
            Assert.Equal(new SeverityGrade("branch-section", 2), burden.Severity);
        }
    }

    public sealed class Volumes
    {
        [Fact]
        public void Six_levels_four_centimetres_apart_hold_3_60_cubic_centimetres()
        {
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels()))).Burdens.Single();
            Assert.Equal(3.60, burden.Volume!.Value.Value, 10);
            Assert.False(burden.VolumeIsLowerBound);
        }

        [Fact]
        public void Uneven_levels_are_weighted_by_their_distance()
        {
            // Arithmetic: levels 10, 12, 15, 19 with .1 .5 .6 .2.
            ExaminationBurden burden = Analysed(Case(Exam(0, Row(10, 1.2, 0.1), Row(12, 1.2, 0.5), Row(15, 1.2, 0.6), Row(19, 1.2, 0.2))))
                .Burdens.Single();
            Assert.Equal(3.85, burden.Volume!.Value.Value, 10);
            Assert.True(burden.VolumeIsLowerBound);
        }

        // Ellipsoid with semi-axes 4, .5, .4 cm, exact 3.351032163829113. R 4.2.2: z <- seq(-4, 4, length = n); a <- pi * .5 * .4 * (1 - z^2/16);
        // sum((a[-1] + a[-n])/2 * diff(z)).
        [Theory]
        [InlineData(3, 2.513274122871835)]
        [InlineData(5, 3.141592653589793)]
        [InlineData(9, 3.298672286269283)]
        [InlineData(17, 3.337942194439155)]
        public void An_ellipsoid_comes_out_as_the_trapezoid_says(int levels, double expected)
        {
            IEnumerable<Reading> readings = Enumerable
                .Range(0, levels)
                .Select(i => -4 + (8.0 * i / (levels - 1)))
                .Select(z => Row(20 + z, 1.5, Math.PI * 0.5 * 0.4 * (1 - (z * z / 16))));
            Assert.Equal(expected, Analysed(Case(Exam(0, readings))).Burdens.Single().Volume!.Value.Value, 10);
        }

        [Fact]
        public void The_error_of_a_volume_is_that_of_its_areas_and_of_the_gain_they_share()
        {
            // Propagation of errors: Var(ln V) = Σ(w·sd)²/V² + 0.03².
            double[] areas = [0, 0.10, 0.45, 0.30, 0.05, 0];
            double[] widths = [2, 4, 4, 4, 4, 2];
            double sum = areas.Select((a, i) => widths[i] * widths[i] * ((0.12 * a * 0.12 * a) + (0.02 * 0.02))).Sum();
            double expected = 3.60 * Math.Sqrt((sum / (3.60 * 3.60)) + (0.03 * 0.03));
            Assert.Equal(expected, Analysed(Case(Exam(0, SixLevels()))).Burdens.Single().VolumeStandardError!.Value.Value, 10);
        }

        [Fact]
        public void A_missed_level_is_filled_with_its_history_and_the_common_change_and_the_error_grows()
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.8)), Exam(120, SixLevels(0.6, without: 3)));
            ExaminationBurden[] burdens = [.. Analysed(course).Burdens];
            ExaminationBurden full = Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.8)), Exam(120, SixLevels(0.6)))).Burdens[2];
            Assert.Equal(3.60 * 0.6, burdens[2].Volume!.Value.Value, 10);
            Assert.True(burdens[2].VolumeStandardError!.Value.Value > 1.2 * full.VolumeStandardError!.Value.Value);
            Assert.Equal(["Axial-18"], burdens[2].LesionTracksMissed);
        }

        [Fact]
        public void A_missed_worst_level_does_not_look_like_healing()
        {
            // The worked table with level 3 not read: the raw sum would say −50 %, and nothing healed.
            ExaminationBurden[] burdens = [.. Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(without: 3)))).Burdens];
            Assert.Equal(3.60, burdens[0].Volume!.Value.Value, 10);
            Assert.Equal(3.60, burdens[1].Volume!.Value.Value, 10);
            Assert.Equal(["Axial-18"], burdens[1].LesionTracksMissed);
        }

        [Fact]
        public void A_missed_only_level_of_the_lesion_leaves_the_volume_unknown()
        {
            ExaminationBurden[] burdens =
            [
                .. Analysed(
                    Case(Exam(0, Row(12, 1.3, 0), Row(16, 1.5, 0.45), Row(20, 1.4, 0)), Exam(60, Row(12, 1.3, 0), Row(20, 1.4, 0)))
                ).Burdens,
            ];
            Assert.Null(burdens[1].Volume);
            Assert.False(burdens[1].VolumeIsLowerBound);
        }

        [Fact]
        public void A_level_that_shows_lesion_and_was_not_outlined_this_time_takes_its_area_from_before() =>
            Assert.Equal(3.60, OutlinedAllBut(18).Volume!.Value.Value, 10);

        [Fact]
        public void A_level_that_was_free_and_shows_lesion_without_an_outline_leaves_the_volume_unknown() =>
            Assert.Null(OutlinedAllBut(10).Volume);

        [Fact]
        public void A_level_that_shows_lesion_and_never_had_an_area_leaves_the_volume_unknown()
        {
            CaseCourse course = Case(
                Exam(0, SixLevels()),
                Exam(60, SixLevels().Append(Row(20, 1.4) with { Role = ReadingRole.Worst })),
                Exam(120, SixLevels())
            );

            Assert.Equal([true, false, true], Analysed(course).Burdens.Select(burden => burden.Volume is not null));
        }

        [Fact]
        public void A_free_level_that_was_not_read_holds_nothing_and_the_volume_stands() =>
            Assert.Equal(
                [3.60, 3.60],
                Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(without: 1))))
                    .Burdens.Select(burden => Math.Round(burden.Volume!.Value.Value, 10))
            );

        /// <summary>The second of two examinations that read the same, but for one level: there the lesion shows, and no area was taken.</summary>
        private static ExaminationBurden OutlinedAllBut(double level) =>
            Analysed(
                Case(
                    Exam(0, SixLevels()),
                    Exam(
                        60,
                        SixLevels()
                            .Select(reading =>
                                reading.Level.Position.Value == level
                                    ? reading with
                                    {
                                        LesionArea = LesionArea.Unknown,
                                        Role = ReadingRole.Worst,
                                    }
                                    : reading
                            )
                    )
                )
            ).Burdens[1];

        [Fact]
        public void A_lesion_level_met_once_is_missed_at_the_very_next_examination_and_not_for_ever()
        {
            CaseCourse course = Case(
                Exam(0, SixLevels()),
                Exam(60, SixLevels().Append(Row(20, 1.4, 0.2))),
                Exam(120, SixLevels()),
                Exam(180, SixLevels())
            );

            Assert.Equal(["", "", "Axial-20", ""], Analysed(course).Burdens.Select(burden => string.Join(' ', burden.LesionTracksMissed)));
        }

        [Fact]
        public void A_doubtful_link_of_a_reading_that_fits_badly_widens_the_error()
        {
            // Level 18 reads 0.15 where its history says 0.45; with probability .6 of the link, 4 cm · √.4 · .30 = .759 cm³ join the error.
            IEnumerable<Reading> odd = SixLevels().Select(reading => reading.Level.Position.Value == 18 ? Row(18, 1.5, 0.15) : reading);
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, odd));
            double sure = Analysed(course).Burdens[1].VolumeStandardError!.Value.Value;
            double doubted = Analysed(course, uncertain: place => place.Level.Position.Value == 18 ? 0.6 : null)
                .Burdens[1]
                .VolumeStandardError!.Value.Value;
            Assert.Equal(Math.Sqrt((sure * sure) + (16 * 0.4 * 0.3 * 0.3)), doubted, 10);
        }

        [Fact]
        public void A_level_read_once_among_three_examinations_does_not_change_the_window()
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels().Append(Row(20, 1.4, 0.4))), Exam(120, SixLevels()));
            Assert.All(Analysed(course).Burdens, burden => Assert.Equal(3.60, burden.Volume!.Value.Value, 10));
        }

        [Fact]
        public void A_diffuse_lesion_is_not_zero()
        {
            IEnumerable<Reading> diffuse = SixLevels()
                .Select(reading => reading.Level.Position.Value == 18 ? reading with { LesionArea = LesionArea.Diffuse } : reading);
            ExaminationBurden burden = Analysed(Case(Exam(0, SixLevels()), Exam(60, diffuse))).Burdens[1];
            Assert.Null(burden.Volume);
            Assert.Null(burden.TotalPercent);
            Assert.Equal(["Axial-18"], burden.LesionTracksMissed);
        }

        [Fact]
        public void Paths_are_summed_for_the_case()
        {
            Reading[] branch =
            [
                Row(20, 0.8, 0, Part.MedialBranch),
                Row(22, 0.8, 0.2, Part.MedialBranch),
                Row(24, 0.8, 0, Part.MedialBranch),
            ];
            Assert.Equal(3.60 + 0.40, Analysed(Case(Exam(0, SixLevels().Concat(branch)))).Burdens.Single().Volume!.Value.Value, 10);
        }

        [Fact]
        public void A_recorded_share_of_a_known_ligament_area_is_an_area()
        {
            IEnumerable<Reading> shares = SixLevels()
                .Select(reading =>
                    reading with
                    {
                        LesionArea = LesionArea.Unknown,
                        LesionPercent = new Percent(100 * reading.LesionArea.Area.Value / reading.LigamentArea!.Value.Value),
                    }
                );
            Assert.Equal(3.60, Analysed(Case(Exam(0, shares))).Burdens.Single().Volume!.Value.Value, 10);
        }
    }

    public sealed class Lengths
    {
        [Fact]
        public void A_lesion_reaches_half_way_to_the_normal_levels() =>
            // Abnormal from 14 to 26 cm, normal at 10 and 30: 12 + 2 + 2.
            Assert.Equal(16, Analysed(Case(Exam(0, SixLevels()))).Burdens.Single().LesionLength!.Value.Value, 10);

        [Fact]
        public void Without_a_normal_level_the_lesion_ends_at_its_last_level() =>
            Assert.Equal(3, Analysed(Case(Exam(0, Row(10, 1, 0.2), Row(13, 1, 0.2)))).Burdens.Single().LesionLength!.Value.Value, 10);

        [Fact]
        public void No_abnormal_level_has_no_length() =>
            Assert.Null(Analysed(Case(Exam(0, Row(10, 1, 0), Row(13, 1, 0)))).Burdens.Single().LesionLength);
    }

    public sealed class Grades
    {
        [Fact]
        public void Grades_of_one_scale_add_up_and_absent_ones_stay_absent()
        {
            Reading graded = Row(10, 1, 0.2) with { Echogenicity = new Grade(GradeScales.Echogenicity0To3, 2) };
            ExaminationBurden burden = Analysed(
                Case(Exam(0, graded, Row(13, 1, 0.2), graded with { Id = "x", Level = new Centimetres(16) }))
            )
                .Burdens.Single();
            Assert.Equal(4, burden.EchogenicitySum);
            Assert.Null(burden.FibreAlignmentSum);
        }

        [Fact]
        public void Grades_of_two_scales_do_not_add_up()
        {
            Reading one = Row(10, 1, 0.2) with { Echogenicity = new Grade(GradeScales.Echogenicity0To3, 2) };
            Reading other = Row(12, 1, 0.2) with { Echogenicity = new Grade(GradeScales.Echogenicity0To4, 2) };
            Assert.Null(Analysed(Case(Exam(0, one, other))).Burdens.Single().EchogenicitySum);
        }
    }

    public sealed class Parts_and_lesions
    {
        // Three levels of a medial branch 2 cm apart, ligament .80, the middle one with lesion.
        private static IEnumerable<Reading> Branch(double lesion, bool middle = true, Part part = Part.MedialBranch) =>
            from row in new[] { Row(34, 0.80, 0, part), Row(36, 0.80, lesion, part), Row(38, 0.80, 0, part) }
            where middle || row.Level.Position.Value != 36
            select row;

        [Fact]
        public void Body_and_branch_have_their_own_figures_beside_the_whole_case()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels().Concat(Branch(0.24)))));
            Assert.Equal([LinkPath.Axial, LinkPath.MedialBranch], analysis.Parts.Select(part => part.Path));
            ExaminationBurden whole = analysis.Burdens.Single();
            ExaminationBurden body = analysis.Parts[0].Burdens.Single();
            ExaminationBurden branch = analysis.Parts[1].Burdens.Single();

            // ECM 330 for each: 0.90/7.90, 0.24/2.40 and (0.90 + 0.24)/(7.90 + 2.40).
            Assert.Equal(100 * 0.90 / 7.90, body.TotalPercent!.Value.Value, 10);
            Assert.Equal(10, branch.TotalPercent!.Value.Value, 10);
            Assert.Equal(100 * 1.14 / 10.30, whole.TotalPercent!.Value.Value, 10);
            Assert.Equal((18.0, 36.0), (body.WorstLevel!.Value.Position.Value, branch.WorstLevel!.Value.Position.Value));
            Assert.Equal(30, branch.WorstPercent!.Value.Value, 10);
            Assert.Equal([3.60, 0.48, 4.08], new[] { body, branch, whole }.Select(burden => Math.Round(burden.Volume!.Value.Value, 10)));
            Assert.Equal([16, 2, 18], new[] { body, branch, whole }.Select(burden => Math.Round(burden.LesionLength!.Value.Value, 10)));
        }

        [Fact]
        public void Body_and_branch_have_each_the_class_of_their_own_scale_and_the_whole_has_none()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels().Concat(Branch(0.24)))));

            // SAEVA 191: 11.4 % of all levels is mild; Boado 2025: a section of 30 % is of the second class.
            Assert.Equal(new SeverityGrade(SeverityScales.TotalPercent, 1), analysis.Parts[0].Burdens.Single().Severity);
            Assert.Equal(new SeverityGrade(SeverityScales.BranchSection, 2), analysis.Parts[1].Burdens.Single().Severity);
            Assert.Null(analysis.Burdens.Single().Severity);
            Assert.True(analysis.Burdens.Single().LevelsComplete);
            // Each lesion is alone on its path and has its class.
            Assert.Equal(analysis.Parts.Select(part => part.Burdens), analysis.Lesions.Select(lesion => lesion.Burdens));
        }

        [Fact]
        public void Two_branches_share_a_scale_and_the_worse_section_classes_the_whole()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, Branch(0.08).Concat(Branch(0.48, part: Part.LateralBranch)))));

            Assert.Equal([1, 3], analysis.Parts.Select(part => part.Burdens.Single().Severity!.Class));
            Assert.Equal(new SeverityGrade(SeverityScales.BranchSection, 3), analysis.Burdens.Single().Severity);
        }

        [Fact]
        public void A_branch_that_has_healed_has_no_class_and_leaves_the_whole_that_of_the_body()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels().Concat(Branch(0.24))), Exam(60, SixLevels().Concat(Branch(0)))));

            Assert.Equal([null, new SeverityGrade(SeverityScales.TotalPercent, 1)], analysis.Burdens.Select(burden => burden.Severity));
            Assert.Equal(2, analysis.Parts[1].Burdens[0].Severity!.Class);
            Assert.Null(analysis.Parts[1].Burdens[1].Severity);
            Assert.Equal(0, analysis.Parts[1].Burdens[1].WorstPercent!.Value.Value);
        }

        [Fact]
        public void A_level_missed_in_the_branch_is_missed_there_alone()
        {
            CaseAnalysis analysis = Analysed(
                Case(Exam(0, SixLevels().Concat(Branch(0.24))), Exam(60, SixLevels().Concat(Branch(0.24, middle: false))))
            );
            string track = analysis
                .Links.Tracks.Single(one => one.Path == LinkPath.MedialBranch && one.ConsensusLevel.Position.Value == 36)
                .Id;

            Assert.Equal([track], analysis.Burdens[1].LesionTracksMissed);
            Assert.Empty(analysis.Parts[0].Burdens[1].LesionTracksMissed);
            Assert.Equal([track], analysis.Parts[1].Burdens[1].LesionTracksMissed);
            Assert.True(analysis.Parts[0].Burdens[1].LevelsComplete);
            Assert.Equal(1, analysis.Parts[0].Burdens[1].Severity!.Class);
            Assert.False(analysis.Parts[1].Burdens[1].LevelsComplete);
        }

        [Fact]
        public void Two_named_lesions_of_one_path_have_their_own_figures_and_no_class()
        {
            Grade Grey(int value) => new(GradeScales.Echogenicity0To3, value);
            CaseAnalysis analysis = Analysed(
                Case(
                    Exam(
                        0,
                        Row(10, 1.2, 0, name: "A"),
                        Row(12, 1.2, 0.6, name: "A") with
                        {
                            Echogenicity = Grey(3),
                        },
                        Row(14, 1.2, 0, name: "A"),
                        Row(20, 1.2, 0, name: "B"),
                        Row(22, 1.2, 0.3, name: "B") with
                        {
                            Echogenicity = Grey(1),
                        },
                        Row(24, 1.2, 0.12, name: "B")
                    )
                )
            );
            ExaminationBurden a = analysis.Lesions[0].Burdens.Single();
            ExaminationBurden b = analysis.Lesions[1].Burdens.Single();

            Assert.Equal([50, 25], new[] { a, b }.Select(burden => Math.Round(burden.WorstPercent!.Value.Value, 10)));
            Assert.Equal([12, 22], new[] { a, b }.Select(burden => burden.WorstLevel!.Value.Position.Value));
            // Each over all six levels of the path, 7.20 cm² in all.
            Assert.Equal(100 * 0.6 / 7.2, a.TotalPercent!.Value.Value, 10);
            Assert.Equal(100 * 0.42 / 7.2, b.TotalPercent!.Value.Value, 10);
            // A: .6·(2 + 2)/2. B: .3·2 + .12·1, and its last level still shows lesion.
            Assert.Equal([1.2, 0.72], new[] { a, b }.Select(burden => Math.Round(burden.Volume!.Value.Value, 10)));
            Assert.Equal([false, true], new[] { a, b }.Select(burden => burden.VolumeIsLowerBound));
            Assert.Equal([2, 3], new[] { a, b }.Select(burden => Math.Round(burden.LesionLength!.Value.Value, 10)));
            Assert.Equal([3, 1], new[] { a, b }.Select(burden => burden.EchogenicitySum!.Value));
            Assert.Equal([null, null], new[] { a, b }.Select(burden => burden.Severity));
            Assert.Equal([true, false], new[] { a, b }.Select(burden => burden.LevelsComplete));
        }

        // Most places decide: two examinations named the level body, one origin; with one each, the more proximal part.
        [Theory]
        [InlineData(Part.Body, Part.Body, Part.Body)]
        [InlineData(Part.Origin, Part.Body, Part.Body)]
        [InlineData(Part.Body, Part.Origin, Part.Origin)]
        [InlineData(Part.Origin, Part.Body, null)]
        public void A_lesion_lies_in_the_part_that_most_of_its_places_were_named(Part first, Part second, Part? third)
        {
            Part[] parts = third is { } last ? [first, second, last] : [first, second];
            IReadOnlyList<LesionTrend> lesions = Analysed(
                Case(parts.Select((part, visit) => Exam(60 * visit, Row(10, 1.2, 0, part), Row(14, 1.2, 0.3, part), Row(18, 1.2, 0, part))))
            ).Lesions;

            Assert.Equal(third ?? Part.Origin, Assert.Single(lesions).Part);
        }

        // Lesion a lies in the body and b in the origin, seen on the same days.
        [Fact]
        public void Of_two_lesions_each_has_its_own_part_and_grade()
        {
            Grade Echo(int value) => new(GradeScales.Echogenicity0To3, value);
            Examination Visit(int day) =>
                Exam(
                    day,
                    Row(6, 1.2, 0.2, Part.Origin, name: "b") with
                    {
                        Echogenicity = Echo(1),
                    },
                    Row(14, 1.2, 0.3, name: "a") with
                    {
                        Echogenicity = Echo(2),
                    },
                    Row(14, 1.2, 0.3, name: "a") with
                    {
                        Id = "again",
                        Echogenicity = Echo(3),
                    },
                    Row(18, 1.2, 0.3, name: "a") with
                    {
                        Echogenicity = Echo(1),
                    }
                );
            IReadOnlyList<LesionTrend> lesions = Analysed(Case(Visit(0), Visit(60))).Lesions;

            Assert.Equal([("b", Part.Origin), ("a", Part.Body)], lesions.Select(lesion => (lesion.Lesion!, lesion.Part)));
            Assert.Equal([1, 4], lesions.Select(lesion => lesion.Burdens[0].EchogenicitySum!.Value));
        }

        [Fact]
        public void Recorded_shares_are_told_lesion_by_lesion()
        {
            CaseAnalysis analysis = Analysed(
                Case(
                    Exam(
                        0,
                        Row(12, name: "A") with
                        {
                            LesionPercent = new Percent(20),
                        },
                        Row(12, name: "B") with
                        {
                            LesionPercent = new Percent(15),
                        }
                    )
                )
            );

            Assert.Equal([20, 15], analysis.Lesions.Select(lesion => lesion.Burdens.Single().WorstPercent!.Value.Value));
            Assert.Equal([20, 15], analysis.Lesions.Select(lesion => lesion.Trend.Series.Single().Value));
        }

        [Fact]
        public void A_case_of_one_lesion_on_one_path_says_the_same_of_all_three()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels())));

            Assert.Same(analysis.Burdens, analysis.Parts.Single().Burdens);
            Assert.Same(analysis.Burdens, analysis.Lesions.Single().Burdens);
        }

        [Fact]
        public void A_part_that_never_showed_lesion_is_none_of_the_parts()
        {
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels().Concat(Branch(0)))));

            Assert.Equal([LinkPath.Axial], analysis.Parts.Select(part => part.Path));
            // The share of the whole counts the branch's levels, that of the part does not.
            Assert.Equal(100 * 0.90 / 10.30, analysis.Burdens.Single().TotalPercent!.Value.Value, 10);
            Assert.Equal(100 * 0.90 / 7.90, analysis.Lesions.Single().Burdens.Single().TotalPercent!.Value.Value, 10);
            Assert.Empty(Analysed(Case(Exam(0, Row(10, 1, 0)))).Parts);
        }
    }
}
