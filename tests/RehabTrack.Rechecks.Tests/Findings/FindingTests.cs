using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Findings;

public sealed class FindingTests
{
    private static Finding[] Of(FindingKind kind, params IEnumerable<Examination> examinations) => Of(kind, Case(examinations));

    private static Finding[] Of(FindingKind kind, CaseCourse course) =>
        [.. Analysed(course).Findings.Where(finding => finding.Kind == kind)];

    public sealed class Ligament_area
    {
        // Vet Times (10 %) and ECM 333 (20 %). At cv 7 % and more so with the shared gain a single area of 1.50 cm² must rise by 21 % to be
        // sure, so 1.81 (+20.7 %) still lies inside the error.
        [Theory]
        [InlineData(1.65, null)]
        [InlineData(1.66, FindingSeverity.Amber)]
        [InlineData(1.80, FindingSeverity.Amber)]
        [InlineData(1.81, FindingSeverity.Red)]
        public void A_rise_is_amber_above_a_tenth_and_red_above_a_fifth_always(double area, FindingSeverity? severity)
        {
            Finding[] findings = Of(FindingKind.LigamentAreaRise, Exam(0, Row(18, 1.50, 0)), Exam(60, Row(18, area, 0)));
            Assert.Equal(severity, findings.SingleOrDefault()?.Severity);
            Assert.All(findings, finding => Assert.True(finding.MayBeMeasurementError));
        }

        [Fact]
        public void A_rise_beyond_the_error_is_not_called_error()
        {
            Finding finding = Of(FindingKind.LigamentAreaRise, Exam(0, Row(18, 1.50, 0)), Exam(60, Row(18, 2.00, 0))).Single();
            Assert.False(finding.MayBeMeasurementError);
            Assert.Equal(100.0 / 3, finding.ChangePercent!.Value, 8);
            Assert.Equal(Start, finding.ComparedWith);
        }

        [Fact]
        public void Twelve_percent_at_a_detectable_change_of_twenty_is_amber_and_may_be_error()
        {
            // cv chosen so that c·√2·SEM is 20 %: ln 1.2/(1.96·√2).
            double log = Math.Log(1.20) / (ComparisonFactors.Single * Math.Sqrt(2));
            AnalysisSettings settings = new()
            {
                Error = new MeasurementErrorSettings
                {
                    LigamentAreaCv = Math.Sqrt(Math.Exp(log * log) - 1),
                    AreaFloorCm2 = 0,
                    SharedGainLog = 0,
                },
            };
            Finding finding = Analysed(Case(Exam(0, Row(18, 1.50, 0)), Exam(60, Row(18, 1.68, 0))), settings)
                .Findings.Single(found => found.Kind == FindingKind.LigamentAreaRise);
            Assert.Equal(FindingSeverity.Amber, finding.Severity);
            Assert.True(finding.MayBeMeasurementError);
            Assert.Equal(20, finding.DetectablePercent!.Value, 8);
        }

        [Fact]
        public void An_uncertain_link_under_a_rise_is_said()
        {
            CaseCourse course = Case(Exam(0, Row(18, 1.5, 0)), Exam(60, Row(18, 2.0, 0)));
            Finding finding = Analysed(course, uncertain: place => place.ExaminationId == course.Examinations[1].Id ? 0.7 : null)
                .Findings.Single(found => found.Kind == FindingKind.LigamentAreaRise);
            Assert.Equal(0.7, finding.Probability);
        }

        [Fact]
        public void Another_stance_is_not_compared() =>
            Assert.Empty(
                Of(
                    FindingKind.LigamentAreaRise,
                    Exam(0, Row(18, 1.5, 0)),
                    Exam(30, Row(18, 2.5, 0)) with
                    {
                        Stance = Stance.NonWeightBearing,
                    },
                    Exam(60, Row(18, 1.5, 0))
                )
            );

        [Fact]
        public void An_earlier_rise_within_the_error_is_no_longer_told_and_one_beyond_it_is_history()
        {
            Finding[] findings = Of(
                FindingKind.LigamentAreaRise,
                Exam(0, Row(14, 1.5, 0), Row(18, 1.5, 0)),
                Exam(60, Row(14, 1.7, 0), Row(18, 2.2, 0)),
                Exam(120, Row(14, 1.7, 0), Row(18, 2.2, 0))
            );
            Finding finding = Assert.Single(findings);
            Assert.True(finding.IsEarlier);
            Assert.Equal(18, finding.Level!.Value.Position.Value);
        }
    }

    public sealed class Setbacks
    {
        [Fact]
        public void A_normal_level_that_is_abnormal_now_is_red_whatever_the_total_does()
        {
            IEnumerable<Reading> second = SixLevels(0.5)
                .Select(reading => reading.Level.Position.Value == 10 ? Row(10, 1.2, 0.15) : reading);
            CaseAnalysis analysis = Analysed(Case(Exam(0, SixLevels()), Exam(60, second)));
            Finding finding = analysis.Findings.Single(found => found.Kind == FindingKind.NewlyAbnormalLevel);
            Assert.Equal(FindingSeverity.Red, finding.Severity);
            Assert.Equal(10, finding.Level!.Value.Position.Value);
            Assert.False(finding.MayBeMeasurementError);
            Assert.True(analysis.Burdens[1].Volume < analysis.Burdens[0].Volume);
        }

        [Fact]
        public void A_trace_may_be_error_and_is_red_all_the_same()
        {
            Finding finding = Of(FindingKind.NewlyAbnormalLevel, Exam(0, Row(18, 1.5, 0)), Exam(60, Row(18, 1.5, 0.03))).Single();
            Assert.Equal(FindingSeverity.Red, finding.Severity);
            Assert.True(finding.MayBeMeasurementError);
        }

        [Fact]
        public void A_level_that_was_unknown_before_was_not_normal() =>
            Assert.Empty(Of(FindingKind.NewlyAbnormalLevel, Exam(0, Row(18, 1.5)), Exam(60, Row(18, 1.5, 0.3))));

        [Fact]
        public void A_new_level_between_normal_ones_is_a_setback() =>
            Assert.Equal(
                FindingSeverity.Red,
                Of(
                        FindingKind.NewLesionLevel,
                        Exam(0, Row(10, 1.5, 0), Row(18, 1.5, 0)),
                        Exam(60, Row(10, 1.5, 0), Row(14, 1.5, 0.3), Row(18, 1.5, 0))
                    )
                    .Single()
                    .Severity
            );

        [Fact]
        public void A_new_level_beside_the_known_lesion_asks_for_a_look() =>
            Assert.Equal(
                FindingSeverity.Amber,
                Of(
                        FindingKind.NewLesionLevel,
                        Exam(0, Row(10, 1.5, 0), Row(18, 1.5, 0.3)),
                        Exam(60, Row(10, 1.5, 0), Row(16, 1.5, 0.3), Row(18, 1.5, 0.3))
                    )
                    .Single()
                    .Severity
            );

        [Fact]
        public void A_lesion_of_a_new_name_is_a_setback()
        {
            Finding finding = Of(
                    FindingKind.NewLesionLevel,
                    Exam(0, Row(10, 1.5, 0), Row(18, 1.5, 0.3, name: "A")),
                    Exam(60, Row(10, 1.5, 0), Row(18, 1.5, 0.3, name: "A"), Row(20, 1.5, 0.2, name: "B"))
                )
                .Single();
            Assert.Equal((FindingSeverity.Red, "B"), (finding.Severity, finding.Lesion));
        }

        [Fact]
        public void A_lesion_at_the_first_examination_is_no_setback()
        {
            Finding[] findings = [.. Analysed(Case(Exam(0, SixLevels()))).Findings];
            Assert.DoesNotContain(findings, finding => finding.Kind is FindingKind.NewLesionLevel or FindingKind.NewlyAbnormalLevel);
        }
    }

    public sealed class Verdicts
    {
        [Theory]
        [InlineData(1.3, 1.8, FindingKind.Worsening, FindingSeverity.Red)]
        [InlineData(1.0, 1.0, FindingKind.NoProgress, FindingSeverity.Amber)]
        public void A_bad_verdict_is_a_finding(double second, double third, FindingKind kind, FindingSeverity severity) =>
            Assert.Equal(
                severity,
                Of(kind, Exam(0, SixLevels()), Exam(60, SixLevels(second)), Exam(120, SixLevels(third))).Single().Severity
            );

        [Fact]
        public void Healing_needs_no_finding()
        {
            Finding[] findings = [.. Analysed(Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55)))).Findings];
            Assert.Empty(findings);
        }
    }

    public sealed class Cautions
    {
        [Fact]
        public void A_missed_lesion_level_is_named_with_its_last_reading()
        {
            Finding finding = Of(FindingKind.LesionLevelMissed, Exam(0, SixLevels()), Exam(60, SixLevels(without: 3))).Single();
            Assert.Equal(FindingSeverity.Amber, finding.Severity);
            Assert.Equal(18, finding.Level!.Value.Position.Value);
            Assert.Equal((Start, Start.AddDays(60)), (finding.ComparedWith!.Value, finding.Date!.Value));
        }

        [Fact]
        public void An_uncertain_link_names_its_probability_and_the_other_levels()
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels()));
            LinkedCourse links = ByLevel(
                course,
                place => place.ExaminationId == course.Examinations[1].Id && place.Level.Position.Value == 18 ? 0.6 : null
            );
            Track[] tracks =
            [
                .. links.Tracks.Select(track =>
                    track with
                    {
                        Steps =
                        [
                            .. track.Steps.Select(step =>
                                step.Uncertain ? step with { Alternatives = [new("Axial-14", new Centimetres(14), 0.4)] } : step
                            ),
                        ],
                    }
                ),
            ];
            Finding finding = CaseAnalyser
                .AnalyseLinked(course, links with { Tracks = tracks }, new AnalysisSettings(), Start.AddDays(60))
                .Findings.Single(found => found.Kind == FindingKind.UncertainLink);
            Assert.Equal((FindingSeverity.Amber, 0.6), (finding.Severity, finding.Probability!.Value));
            Assert.Equal([new Centimetres(14)], finding.OtherLevels);
        }

        /// <summary>Three examinations decide: a doubt in any of them bears on the verdict of today, an older one does not.</summary>
        [Theory]
        [InlineData(4, false)]
        [InlineData(5, true)]
        public void An_uncertain_link_of_a_deciding_examination_stands_among_those_of_today(int examinations, bool isEarlier)
        {
            CaseCourse course = Case(Enumerable.Range(0, examinations).Select(look => Exam(60 * look, SixLevels())));
            LinkedCourse links = ByLevel(
                course,
                place => place.ExaminationId == course.Examinations[1].Id && place.Level.Position.Value == 18 ? 0.6 : null
            );
            Finding finding = CaseAnalyser
                .AnalyseLinked(course, links, new AnalysisSettings(), Start.AddDays(60 * examinations))
                .Findings.Single(found => found.Kind == FindingKind.UncertainLink);
            Assert.Equal(isEarlier, finding.IsEarlier);
        }

        [Theory]
        [InlineData(-0.8, 0.2, true)]
        [InlineData(-0.8, 0.5, false)]
        [InlineData(0.4, 0.1, false)]
        [InlineData(0.5, 0.2, true)]
        public void A_tape_shift_is_told_from_half_a_centimetre_and_two_errors(double shift, double error, bool told)
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels()), Exam(120, SixLevels()));
            LinkedCourse links = ByLevel(course);
            ExaminationShift[] shifts =
            [
                links.Shifts[0],
                links.Shifts[1] with
                {
                    StandardDeviation = new(0.2),
                },
                new(course.Examinations[2].Id, new(shift), new(error)),
            ];
            Finding[] findings =
            [
                .. CaseAnalyser
                    .AnalyseLinked(course, links with { Shifts = shifts }, new AnalysisSettings(), Start.AddDays(120))
                    .Findings.Where(found => found.Kind == FindingKind.TapeShift),
            ];
            Assert.Equal(told ? [shift] : [], findings.Select(found => found.Length!.Value.Value));
        }

        [Fact]
        public void When_the_first_examination_is_the_odd_one_the_others_are_not_blamed()
        {
            CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels()), Exam(120, SixLevels()), Exam(180, SixLevels()));
            ExaminationShift[] shifts =
            [
                new(course.Examinations[0].Id, new(0), new(0)),
                .. course.Examinations.Skip(1).Select(examination => new ExaminationShift(examination.Id, new(0.9), new(0.2))),
            ];
            Finding finding = CaseAnalyser
                .AnalyseLinked(course, ByLevel(course) with { Shifts = shifts }, new AnalysisSettings(), Start.AddDays(180))
                .Findings.Single(found => found.Kind == FindingKind.TapeShift);
            Assert.Equal((course.Examinations[0].Id, -0.9), (finding.ExaminationId, finding.Length!.Value.Value));
        }

        [Fact]
        public void A_change_of_measurer_names_both()
        {
            IEnumerable<Reading> By(string? name) => SixLevels().Select(reading => reading with { Measurer = name });
            Assert.Equal(["Ada", "Ben"], Of(FindingKind.MeasurerChanged, Exam(0, By("Ada")), Exam(60, By("Ben"))).Single().Persons);
            Assert.Empty(Of(FindingKind.MeasurerChanged, Exam(0, By("Ada")), Exam(60, By(null))));
            Assert.Equal(1, Of(FindingKind.MeasurerNotGiven, Exam(0, By("Ada")), Exam(60, By(null))).Single().Count);
        }

        [Fact]
        public void Another_stance_an_unknown_onset_and_the_acute_phase_are_told()
        {
            CaseCourse course = Case(
                Exam(3, SixLevels()),
                Exam(40, SixLevels()),
                Exam(60, SixLevels()) with
                {
                    Stance = Stance.NonWeightBearing,
                }
            ) with
            {
                Onset = Start,
            };
            Assert.Equal(FindingSeverity.Amber, Of(FindingKind.StanceDiffers, course).Single().Severity);
            Assert.Equal(1, Of(FindingKind.AcutePhaseLeftOut, course).Single().Count);
            Assert.Equal(3, Of(FindingKind.ProvisionalBaseline, course).Single().Count);
            Assert.Empty(Of(FindingKind.OnsetUnknown, course));
            Assert.Single(Of(FindingKind.OnsetUnknown, course with { Onset = null }));
        }

        [Theory]
        [InlineData(10, true)]
        [InlineData(11, false)]
        public void A_baseline_is_provisional_up_to_the_tenth_day(int day, bool provisional) =>
            Assert.Equal(provisional, Of(FindingKind.ProvisionalBaseline, Case(Exam(day, SixLevels())) with { Onset = Start }).Length == 1);

        [Fact]
        public void What_is_missing_at_the_latest_examination_is_told()
        {
            CaseCourse course = Case(
                Exam(0, SixLevels()),
                Exam(60, Row(18, 1.5, 0.45) with { LesionArea = LesionArea.Diffuse }, Row(22, 1.4, 0.3))
            );
            Assert.Equal(18, Of(FindingKind.DiffuseLesion, course).Single().Level!.Value.Position.Value);
            Assert.Equal(2, Of(FindingKind.TooFewLevels, course).Single().Count);
            Assert.Single(Of(FindingKind.LevelsIncomplete, course));
            Assert.Single(Of(FindingKind.VolumeLowerBound, Exam(0, Row(10, 1.2, 0), Row(14, 1.2, 0.2))));
        }

        [Fact]
        public void A_worse_fibre_grade_comes_with_the_probability_that_it_is_true()
        {
            Reading Fibre(int grade) => Row(18, 1.5, 0.4) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) };
            Finding finding = Of(FindingKind.FibreAlignmentWorse, Exam(0, Fibre(1)), Exam(60, Fibre(2))).Single();
            Assert.Equal(FindingSeverity.Note, finding.Severity);
            Assert.Equal(GradeComparison.Of(1, 2).Worse, finding.Probability);
            Assert.Empty(Of(FindingKind.FibreAlignmentWorse, Exam(0, Fibre(2)), Exam(60, Fibre(2))));
        }

        [Fact]
        public void A_changed_scale_is_not_compared()
        {
            Reading Graded(GradeScale scale, int grade) => Row(18, 1.5, 0.4) with { Echogenicity = new Grade(scale, grade) };
            CaseCourse changed = Case(Exam(0, Graded(GradeScales.Echogenicity0To3, 3)), Exam(60, Graded(GradeScales.Echogenicity0To4, 2)));
            CaseCourse brighter = Case(Exam(0, Graded(GradeScales.Echogenicity0To3, 3)), Exam(60, Graded(GradeScales.Echogenicity0To3, 2)));
            Assert.Single(Of(FindingKind.ScaleChanged, changed));
            Assert.Empty(Of(FindingKind.EchogenicityOnly, changed));
            Assert.Equal(-1, Of(FindingKind.EchogenicityOnly, brighter).Single().Count);
        }
    }

    [Fact]
    public void What_needs_a_person_now_comes_first_and_the_worst_of_it_on_top()
    {
        Finding[] findings =
        [
            .. Analysed(
                Case(
                    Exam(0, SixLevels()),
                    Exam(60, SixLevels(1.4).Select(reading => reading.Level.Position.Value == 10 ? Row(10, 1.2, 0.3) : reading)),
                    Exam(120, SixLevels(1.9, without: 2))
                )
            ).Findings,
        ];
        Assert.Equal(findings.OrderBy(finding => finding.IsEarlier).ThenByDescending(finding => finding.Severity), findings);
        Assert.Equal(FindingSeverity.Red, findings[0].Severity);
        Assert.Contains(findings, finding => finding is { IsEarlier: true, Kind: FindingKind.NewlyAbnormalLevel });
    }

    [Fact]
    public void A_case_without_examinations_has_nothing_to_tell() => Assert.Empty(Analysed(Case()).Findings);
}
