using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Suggestions;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Suggestions;

public sealed class SuggestionTests
{
    private static readonly VisitSigns AllWell = new()
    {
        HeatSwellingOrPain = false,
        PainBackWithWork = false,
        Sound = true,
        SoundAtTrotInHand = true,
        UnderAntiInflammatory = false,
        HadShockWave = false,
        HadNeurectomy = false,
    };

    /// <summary>Three examinations 60 days apart; lesion and ligament of every level times these.</summary>
    private static CaseCourse Course(
        double[] lesion,
        double[] ligament,
        Func<int, Reading, Reading>? change = null,
        Func<int, int?>? without = null
    ) =>
        Case(
            lesion.Select(
                (shrink, visit) =>
                    Exam(
                        60 * visit,
                        SixLevels(shrink, without?.Invoke(visit))
                            .Select(reading => reading with { LigamentArea = Cm2(reading.LigamentArea!.Value.Value * ligament[visit]) })
                            .Select(reading => change?.Invoke(visit, reading) ?? reading)
                    )
            )
        );

    private static CaseCourse BothFall(Func<int, Reading, Reading>? change = null) => Course([1, 0.5, 0.25], [1, 0.85, 0.7], change);

    private static Suggestion Suggested(
        CaseCourse course,
        AskedStep asked = AskedStep.More,
        VisitSigns? signs = null,
        AnalysisSettings? settings = null
    ) => CaseAnalyser.Suggest(course, Analysed(course, settings), asked, signs ?? AllWell);

    private static RuleCode[] Codes(Suggestion suggestion) => [.. suggestion.Hits.Select(hit => hit.Rule.Code).Distinct()];

    private static Reading Graded(Reading reading, int echogenicity, int fibre) =>
        reading with
        {
            Echogenicity = new Grade(GradeScales.Echogenicity0To3, echogenicity),
            FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, fibre),
        };

    public sealed class Advance
    {
        // ECM 353: lesion and ligament area fallen at the same level; sound is our addition.
        [Fact]
        public void Lesion_and_ligament_fallen_at_the_worst_level_and_sound()
        {
            Suggestion suggestion = Suggested(BothFall());

            Assert.Equal(SuggestedMove.Advance, suggestion.Move);
            Assert.Equal([RuleCode.Advance], Codes(suggestion));
            Assert.Equal([AdvanceCondition.LesionFallen, AdvanceCondition.LigamentFallen, AdvanceCondition.Sound], suggestion.Met);
            Assert.Equal(18, suggestion.Evidence!.Level.Position.Value);
            Assert.Equal(-75, suggestion.Evidence.Lesion!.ChangePercent!.Value, 8);
            Assert.Equal(-30, suggestion.Evidence.Ligament!.ChangePercent!.Value, 8);
        }

        // An unchanged ligament area lies inside its error: neither fallen nor shown not to have grown by a tenth.
        [Fact]
        public void Inside_the_error_is_not_stable()
        {
            Suggestion suggestion = Suggested(Course([1, 0.5, 0.25], [1, 1, 1], (visit, reading) => Graded(reading, 2 - visit, 2 - visit)));

            Assert.Equal(SuggestedMove.Hold, suggestion.Move);
            Assert.Equal([RuleCode.EvidenceMissing], Codes(suggestion));
            Assert.Equal([AdvanceCondition.LigamentStable], suggestion.Unmet);
            Assert.True(suggestion.Evidence!.LigamentAtMostPercent > 10);
        }

        // With a ligament cv of 2 % an unchanged area is shown to lie below the amber line of 10 %.
        [Theory]
        [InlineData(1, 1, SuggestedMove.Advance)]
        [InlineData(2, 1, SuggestedMove.Hold)]
        [InlineData(1, 2, SuggestedMove.Hold)]
        public void Stable_needs_brighter_and_better_aligned(int echogenicity, int fibre, SuggestedMove move)
        {
            AnalysisSettings precise = new()
            {
                Error = new MeasurementErrorSettings
                {
                    LigamentAreaCv = 0.02,
                    SharedGainLog = 0,
                    AreaFloorCm2 = 0.01,
                },
            };
            CaseCourse course = Course(
                [1, 0.5, 0.25],
                [1, 1, 1],
                (visit, reading) => visit == 2 ? Graded(reading, echogenicity, fibre) : Graded(reading, 2, 2)
            );

            Suggestion suggestion = Suggested(course, settings: precise);

            Assert.Equal(move, suggestion.Move);
            Assert.Contains(AdvanceCondition.LigamentStable, suggestion.Met);
            Assert.InRange(suggestion.Evidence!.LigamentAtMostPercent!.Value, 0, 10);
        }

        [Fact]
        public void A_rule_switched_off_suggests_no_advance()
        {
            AnalysisSettings settings = new() { Rules = new RuleSettings().WithOff([RuleCode.Advance]) };

            Suggestion suggestion = Suggested(BothFall(), settings: settings);

            Assert.Equal(SuggestedMove.Hold, suggestion.Move);
            Assert.Empty(suggestion.Unmet);
        }
    }

    public sealed class Trot
    {
        // AS 618: at least 8 weeks, sound at trot in hand. Onset lies 60 days before the first examination, the last one 120 days after it.
        [Theory]
        [InlineData(49, true, SuggestedMove.Hold)] // first day of week 7
        [InlineData(55, true, SuggestedMove.Hold)]
        [InlineData(56, true, SuggestedMove.Advance)] // first day of week 8
        [InlineData(63, true, SuggestedMove.Advance)]
        [InlineData(63, false, SuggestedMove.Hold)] // week 9, not sound
        public void It_waits_eight_weeks_from_the_plan_start_and_needs_a_sound_trot(int days, bool sound, SuggestedMove move)
        {
            VisitSigns signs = AllWell with { PlanStart = Start.AddDays(120 - days), SoundAtTrotInHand = sound };

            Suggestion suggestion = Suggested(BothFall(), AskedStep.Trot, signs);

            Assert.Equal(move, suggestion.Move);
            Assert.Equal(Start.AddDays(120 - days + 56), suggestion.TrotFrom);
        }

        [Fact]
        public void A_re_injury_starts_the_weeks_anew()
        {
            CaseCourse course = BothFall() with { Reinjury = Start.AddDays(-29) };

            Assert.Equal(Start.AddDays(-29 + 56), Suggested(course, AskedStep.Trot).TrotFrom);
        }

        [Fact]
        public void Without_any_start_the_time_is_not_long_enough()
        {
            Suggestion suggestion = Suggested(BothFall() with { Onset = null }, AskedStep.Trot);

            Assert.Null(suggestion.TrotFrom);
            Assert.Equal([AdvanceCondition.LongEnough], suggestion.Unmet);
        }
    }

    public sealed class Canter
    {
        // ECM 333: fibre 2, echogenicity 0: not suggested; near normal read as 0 to 1.
        [Theory]
        [InlineData(0, 2, SuggestedMove.Hold)]
        [InlineData(2, 0, SuggestedMove.Hold)]
        [InlineData(1, 1, SuggestedMove.Advance)]
        public void It_needs_both_grades_near_normal(int echogenicity, int fibre, SuggestedMove move)
        {
            CaseCourse course = BothFall((_, reading) => Graded(reading, echogenicity, fibre));

            Assert.Equal(move, Suggested(course, AskedStep.CanterOrGallop).Move);
        }

        [Fact]
        public void A_grade_that_was_not_given_is_not_near_normal() =>
            Assert.Equal(
                [AdvanceCondition.EchogenicityNearNormal, AdvanceCondition.FibreAlignmentNearNormal],
                Suggested(BothFall(), AskedStep.CanterOrGallop).Unmet
            );
    }

    public sealed class Soundness
    {
        // From memory: sound under anti-inflammatories, soon after shock wave, or after neurectomy is no evidence.
        public static TheoryData<VisitSigns, RuleCode> Signs =>
            new()
            {
                { AllWell with { Sound = false }, RuleCode.NotSound },
                { AllWell with { UnderAntiInflammatory = true }, RuleCode.SoundnessMasked },
                { AllWell with { HadNeurectomy = true }, RuleCode.SoundnessMasked },
                { AllWell with { HadShockWave = true }, RuleCode.SoundnessMasked },
                { AllWell with { HadShockWave = true, LastShockWave = Start.AddDays(120 - 14) }, RuleCode.SoundnessMasked },
                { AllWell with { HadShockWave = true, LastShockWave = Start.AddDays(120 - 15) }, RuleCode.Advance },
                { AllWell with { Sound = null }, RuleCode.SoundnessNotRecorded },
                { AllWell with { UnderAntiInflammatory = null }, RuleCode.SoundnessNotRecorded },
                { AllWell with { HadShockWave = null }, RuleCode.SoundnessNotRecorded },
                { AllWell with { HadNeurectomy = null }, RuleCode.SoundnessNotRecorded },
            };

        [Theory]
        [MemberData(nameof(Signs))]
        public void Only_a_sound_horse_with_nothing_to_hide_it_counts(VisitSigns signs, RuleCode expected) =>
            Assert.Equal([expected], Codes(Suggested(BothFall(), signs: signs)));
    }

    public sealed class Precedence
    {
        [Fact]
        public void Signs_stop_whatever_the_pictures_say()
        {
            Suggestion suggestion = Suggested(BothFall(), signs: AllWell with { HeatSwellingOrPain = true, PainBackWithWork = true });

            Assert.Equal(SuggestedMove.Stop, suggestion.Move);
            Assert.Equal([RuleCode.SignsPresent, RuleCode.PainBackWithWork], Codes(suggestion));
        }

        // ECM 333 and Vet Times: 1.50 → 1.65 none, 1.66 and 1.80 amber, 1.81 red; the error only adds "measure again".
        [Theory]
        [InlineData(1.65, null)]
        [InlineData(1.66, RuleCode.LigamentAreaAmber)]
        [InlineData(1.80, RuleCode.LigamentAreaAmber)]
        [InlineData(1.81, RuleCode.LigamentAreaRed)]
        public void A_rise_of_the_ligament_steps_back_by_its_line_alone(double area, RuleCode? expected)
        {
            CaseCourse course = Course(
                [1, 0.5, 0.25],
                [1, 1, 1],
                (visit, reading) => visit == 2 && reading.Level.Position.Value == 18 ? reading with { LigamentArea = Cm2(area) } : reading
            );

            Suggestion suggestion = Suggested(course);
            RuleHit[] hits = [.. suggestion.Hits.Where(hit => hit.Rule.Move == SuggestedMove.StepBack)];

            Assert.Equal(expected is { } code ? [code] : [], hits.Select(hit => hit.Rule.Code));
            Assert.Equal(expected is null ? SuggestedMove.Hold : SuggestedMove.StepBack, suggestion.Move);
            Assert.All(hits, hit => Assert.True(hit.Finding!.MayBeMeasurementError));
        }

        // Adams & Stashak's Lameness in Horses, 7th ed., p. 618: pain that comes back with the work.
        [Fact]
        public void Pain_back_with_work_alone_steps_back()
        {
            Suggestion suggestion = Suggested(BothFall(), signs: AllWell with { PainBackWithWork = true });

            Assert.Equal((SuggestedMove.StepBack, FindingSeverity.Amber), (suggestion.Move, suggestion.Severity));
            Assert.Equal([RuleCode.PainBackWithWork], Codes(suggestion));
        }

        // Common practice, no source: which level a reading belongs to must be settled before more work rests on it.
        [Theory]
        [InlineData(14, true)]
        [InlineData(30, false)]
        public void An_uncertain_link_alone_holds_where_the_lesion_is(double level, bool holds)
        {
            CaseCourse course = BothFall();
            CaseAnalysis analysis = Analysed(
                course,
                uncertain: place => place.ExaminationId == course.Examinations[2].Id && place.Level.Position.Value == level ? 0.6 : null
            );

            Suggestion suggestion = CaseAnalyser.Suggest(course, analysis, AskedStep.More, AllWell);

            Assert.Equal(holds ? SuggestedMove.Hold : SuggestedMove.Advance, suggestion.Move);
            Assert.Equal(holds, Codes(suggestion).Contains(RuleCode.LesionLinkUncertain));
        }

        // SAEVA Congress 2018, p. 197: new tears sit beside the repair. A level read for the first time there shows no lesion that was not known:
        // an amber finding asks to look, and no rule speaks.
        [Fact]
        public void A_level_read_for_the_first_time_beside_the_known_lesion_is_a_finding_and_no_setback()
        {
            CaseCourse course = BothFall();
            CaseCourse more = course with
            {
                Examinations =
                [
                    .. course.Examinations.Take(2),
                    course.Examinations[2] with
                    {
                        Readings = [.. course.Examinations[2].Readings, Row(20, 1, 0.1) with { Id = "between" }],
                    },
                ],
            };

            Assert.Equal(
                FindingSeverity.Amber,
                Analysed(more).Findings.Single(finding => finding.Kind == FindingKind.NewLesionLevel).Severity
            );
            Assert.DoesNotContain(RuleCode.NewOrNewlyAbnormalLevel, Codes(Suggested(more)));
            Assert.Equal(Suggested(course).Move, Suggested(more).Move);
        }

        [Fact]
        public void A_newly_abnormal_level_steps_back_although_the_total_falls()
        {
            CaseCourse course = Course(
                [1, 0.5, 0.25],
                [1, 0.85, 0.7],
                (visit, reading) =>
                    visit == 2 && reading.Level.Position.Value == 30 ? reading with { LesionArea = LesionArea.Measured(Cm2(0.2)) } : reading
            );

            Suggestion suggestion = Suggested(course);

            Assert.Equal(SuggestedMove.StepBack, suggestion.Move);
            Assert.Equal(FindingSeverity.Red, suggestion.Severity);
            Assert.Equal(RuleCode.NewOrNewlyAbnormalLevel, suggestion.Hits[0].Rule.Code);
        }

        [Fact]
        public void A_lesion_that_does_not_move_holds()
        {
            Suggestion suggestion = Suggested(Course([1, 1, 1], [1, 1, 1]));

            Assert.Equal(SuggestedMove.Hold, suggestion.Move);
            Assert.Contains(RuleCode.NoProgress, Codes(suggestion));
        }

        // Arithmetic: with level 3 not read the sum falls by a third without any healing.
        [Fact]
        public void A_worst_level_that_was_not_read_holds()
        {
            Suggestion suggestion = Suggested(Course([1, 0.5, 0.25], [1, 0.85, 0.7], without: visit => visit == 2 ? 3 : null));

            Assert.Equal(SuggestedMove.Hold, suggestion.Move);
            Assert.Contains(RuleCode.LesionLevelNotRead, Codes(suggestion));
        }

        [Fact]
        public void One_examination_holds_as_not_yet_readable()
        {
            Suggestion suggestion = Suggested(Case(Exam(0, SixLevels())));

            Assert.Equal(SuggestedMove.Hold, suggestion.Move);
            Assert.Equal([RuleCode.NotYetReadable], Codes(suggestion));
            Assert.Null(suggestion.Evidence);
        }

        [Fact]
        public void A_worsening_lesion_steps_back_and_says_no_advance()
        {
            Suggestion suggestion = Suggested(Course([1, 1.4, 2], [1, 1, 1]));

            Assert.Equal(SuggestedMove.StepBack, suggestion.Move);
            Assert.Contains(RuleCode.Worsening, Codes(suggestion));
            Assert.DoesNotContain(suggestion.Hits, hit => hit.Rule.Move == SuggestedMove.Advance);
        }

        [Fact]
        public void A_rule_that_is_switched_off_is_silent()
        {
            AnalysisSettings settings = new() { Rules = new RuleSettings().WithOff([RuleCode.SignsPresent, RuleCode.NoProgress]) };

            Assert.Equal("signs-present,no-progress", settings.Rules.SwitchedOff);
            Assert.Equal(
                SuggestedMove.Advance,
                Suggested(BothFall(), signs: AllWell with { HeatSwellingOrPain = true }, settings: settings).Move
            );
        }
    }

    public sealed class Table
    {
        [Fact]
        public void Every_rule_has_its_row() => Assert.Equal(Enum.GetValues<RuleCode>(), RuleTable.All.Select(rule => rule.Code));

        [Fact]
        public void Stop_outranks_step_back_outranks_hold_outranks_advance() =>
            Assert.Equal(
                [SuggestedMove.Stop, SuggestedMove.StepBack, SuggestedMove.Hold, SuggestedMove.Advance],
                Enum.GetValues<SuggestedMove>().OrderDescending()
            );
    }
}
