using System.Collections;
using System.Reflection;
using CsCheck;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Tests.Linking;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Analysis;

public sealed class CaseAnalyserTests
{
    // Courses as they come in life: one to five examinations, some levels, areas absent, zero or diffuse, two lesions, two stances.
    private static readonly Gen<CaseCourse> Courses = Gen.Int[0, 1_000_000].Select(seed => Random(seed));

    [Fact]
    public void The_order_of_examinations_and_readings_changes_nothing() =>
        Courses.Sample(
            course =>
            {
                CaseCourse turned = course with
                {
                    Examinations =
                    [
                        .. course
                            .Examinations.Reverse()
                            .Select(examination => examination with { Readings = [.. examination.Readings.Reverse()] }),
                    ],
                };
                Assert.Equal(Told(Whole(course)), Told(Whole(turned)));
                Assert.Equal(Hash(course), Hash(turned));
            },
            iter: 60,
            seed: "0000KOIPWMT2"
        );

    [Fact]
    public void An_examination_after_the_date_asked_about_changes_nothing() =>
        Courses.Sample(
            course =>
            {
                CaseCourse later = course with { Examinations = [.. course.Examinations, Exam(1000, SixLevels(5))] };
                Assert.Equal(Told(Whole(course)), Told(Whole(later)));
                Assert.Equal(Hash(course), Hash(later));
            },
            iter: 60,
            seed: "0000KOIPWMT2"
        );

    [Fact]
    public void A_word_that_names_a_later_examination_is_passed_over_and_not_refused()
    {
        CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels()), Exam(120, SixLevels()));
        PlaceKey Worst(int visit) => Places.Of(course.Examinations[visit])[2].Key;
        LinkConstraint[] words =
        [
            new(LinkConstraintKind.Pin, Worst(0), Worst(2)),
            new(LinkConstraintKind.Pin, Worst(2), Worst(1)),
            new(LinkConstraintKind.Break, Worst(0), Worst(1)),
        ];

        CaseAnalysis analysis = CaseAnalyser.Analyse(course, words, new AnalysisSettings(), Start.AddDays(60));

        Assert.Empty(analysis.Links.LeftOut);
        Assert.NotEqual(analysis.Links.TrackOf(Worst(0)).Id, analysis.Links.TrackOf(Worst(1)).Id);
    }

    // The acute phase after an onset on the day of the last examination is not over; an onset after it is a slip.
    [Theory]
    [InlineData(120, VerdictReason.AcutePhase)]
    [InlineData(121, VerdictReason.FallOfSlope)]
    public void An_onset_on_the_day_of_the_last_examination_counts_and_a_later_one_is_a_slip(int onset, VerdictReason expected)
    {
        CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55))) with
        {
            Onset = Start.AddDays(onset),
        };

        Assert.Equal(expected, CaseAnalyser.Analyse(course, [], new AnalysisSettings(), Start.AddDays(120)).Trend.Reason);
    }

    [Fact]
    public void No_figure_is_ever_not_a_number() => Courses.Sample(course => NoNaN(Whole(course)), iter: 150, seed: "0000KOIPWMT2");

    [Fact]
    public void Areas_twice_as_large_hold_twice_the_volume_and_heal_at_the_same_rate()
    {
        AnalysisSettings settings = new() { Error = new MeasurementErrorSettings { AreaFloorCm2 = 1e-9 } };
        Gen.Double[0.3, 3]
            .Array[3, 5]
            .Sample(
                sizes =>
                {
                    CaseCourse course = Case(sizes.Select((size, i) => Exam(60 * i, SixLevels(size))));
                    CaseCourse doubled = Scaled(course, 2);
                    CaseAnalysis one = Analysed(course, settings);
                    CaseAnalysis two = Analysed(doubled, settings);
                    for (int i = 0; i < one.Burdens.Count; i++)
                    {
                        Assert.Equal(2 * one.Burdens[i].Volume!.Value.Value, two.Burdens[i].Volume!.Value.Value, 9);
                        Assert.Equal(one.Burdens[i].TotalPercent!.Value.Value, two.Burdens[i].TotalPercent!.Value.Value, 9);
                    }

                    Assert.Equal(one.Trend.Window!.LogPer60Days, two.Trend.Window!.LogPer60Days, 6);
                    Assert.Equal(one.Trend.Window.StandardError, two.Trend.Window.StandardError, 6);
                },
                iter: 100,
                seed: "0000KOIPWMT2"
            );
    }

    [Fact]
    public void Linked_from_the_tape_the_worked_course_is_the_same_as_linked_by_hand()
    {
        CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55)));
        CaseAnalysis analysis = Whole(course);
        Assert.Equal(Verdict.Healing, analysis.Trend.Verdict);
        Assert.Equal(6, analysis.Links.Tracks.Count);
        Assert.Equal(3.60, analysis.Burdens[0].Volume!.Value.Value, 1);
        Assert.Equal(-45, analysis.Trend.ChangePercent!.Value, 6);
        Assert.Equal(CaseAnalyser.EngineVersion, analysis.EngineVersion);
    }

    /// <summary>A landmark felt a centimetre too high or too low moves every level of that day and changes no volume.</summary>
    [Fact]
    public void A_tape_that_reads_a_centimetre_off_leaves_the_volumes_as_they_are()
    {
        double[] shrunk = [1, 0.75, 0.55, 0.4];
        double[] shifts = [0, 1, -1, 0.6];
        CaseAnalysis straight = Whole(Case(shrunk.Select((size, i) => Exam(60 * i, SixLevels(size)))));
        CaseAnalysis shifted = Whole(
            Case(shrunk.Select((size, i) => Exam(60 * i, SixLevels(size).Select(reading => Moved(reading, shifts[i])))))
        );

        Assert.Equal(6, shifted.Links.Tracks.Count);
        Assert.All(
            straight.Burdens.Zip(shifted.Burdens),
            pair => Assert.Equal(1, pair.Second.Volume!.Value.Value / pair.First.Volume!.Value.Value, 0.01)
        );
        Assert.Equal(straight.Trend.Window!.LogPer60Days, shifted.Trend.Window!.LogPer60Days, 0.01);

        static Reading Moved(Reading reading, double centimetres) =>
            reading with
            {
                Level = new Centimetres(reading.Level.Position.Value + centimetres),
            };
    }

    [Fact]
    public void A_constraint_on_a_later_examination_is_passed_over()
    {
        CaseCourse course = Case(Exam(0, SixLevels()), Exam(60, SixLevels()));
        PlaceKey first = Places.Of(course.Examinations[0])[0].Key;
        PlaceKey second = Places.Of(course.Examinations[1])[1].Key;
        CaseAnalysis analysis = CaseAnalyser.Analyse(
            course,
            [new(RehabTrack.Rechecks.Linking.LinkConstraintKind.Pin, first, second)],
            new AnalysisSettings(),
            Start
        );
        Assert.Equal(Told(CaseAnalyser.Analyse(course, [], new AnalysisSettings(), Start)), Told(analysis));
    }

    [Fact]
    public void The_fingerprint_feels_every_figure_and_setting_and_no_note()
    {
        CaseCourse course = Case(Exam(0, SixLevels()));
        CaseCourse noted = Case(Exam(0, SixLevels().Select(reading => reading with { Note = "seen" })));
        Assert.Equal(Hash(course), Hash(noted));
        Assert.Matches("^[0-9a-f]{64}$", Hash(course));
        string[] others =
        [
            Hash(Scaled(course, 1.0000001)),
            Hash(course with { Onset = null }),
            Hash(course with { TargetFraction = 0.2 }),
            InputHash.Of(course, [], new AnalysisSettings { Trend = new TrendSettings { StallZ = 1.7 } }, Start.AddDays(400)),
            InputHash.Of(course, [], new AnalysisSettings(), Start.AddDays(401)),
        ];
        Assert.Equal(others.Length + 1, others.Append(Hash(course)).Distinct(StringComparer.Ordinal).Count());
    }

    private static CaseAnalysis Whole(CaseCourse course) => CaseAnalyser.Analyse(course, [], new AnalysisSettings(), Start.AddDays(400));

    private static string Hash(CaseCourse course) => InputHash.Of(course, [], new AnalysisSettings(), Start.AddDays(400));

    private static string Told(CaseAnalysis analysis) =>
        System.Text.Json.JsonSerializer.Serialize(
            new
            {
                analysis.Burdens,
                analysis.Trend,
                analysis.Lesions,
                analysis.Findings,
            }
        );

    private static CaseCourse Scaled(CaseCourse course, double factor) =>
        course with
        {
            Examinations =
            [
                .. course.Examinations.Select(examination =>
                    examination with
                    {
                        Readings =
                        [
                            .. examination.Readings.Select(reading =>
                                reading with
                                {
                                    LigamentArea = reading.LigamentArea is { } ligament ? factor * ligament : null,
                                    LesionArea = reading.LesionArea.MeasuredArea is { } lesion
                                        ? LesionArea.Measured(factor * lesion)
                                        : reading.LesionArea,
                                }
                            ),
                        ],
                    }
                ),
            ],
        };

    private static void NoNaN(object? value)
    {
        switch (value)
        {
            case null or string or Enum or DateOnly:
                return;
            case double number:
                Assert.True(double.IsFinite(number));
                return;
            case IEnumerable items:
                foreach (object? item in items)
                {
                    NoNaN(item);
                }

                return;
            default:
                if (value.GetType().Namespace?.StartsWith("RehabTrack", StringComparison.Ordinal) ?? false)
                {
                    foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
                    {
                        NoNaN(property.GetValue(value));
                    }
                }

                return;
        }
    }

    private static CaseCourse Random(int seed)
    {
        Random random = new(seed);
        int count = random.Next(1, 6);
        List<Examination> examinations = [];
        for (int i = 0; i < count; i++)
        {
            List<Reading> readings = [];
            for (int level = 0; level < 5; level++)
            {
                if (random.NextDouble() < 0.2)
                {
                    continue;
                }

                double ligament = 1 + random.NextDouble();
                Reading reading = Row(
                    10 + (3 * level) + Math.Round(random.NextDouble(), 1),
                    random.NextDouble() < 0.8 ? ligament : null,
                    random.NextDouble() switch
                    {
                        < 0.2 => 0,
                        < 0.8 => ligament * random.NextDouble() * 0.6,
                        _ => null,
                    },
                    random.NextDouble() < 0.8 ? Rechecks.Anatomy.Part.Body : Rechecks.Anatomy.Part.MedialBranch,
                    random.NextDouble() < 0.5 ? "Ada" : null,
                    random.NextDouble() < 0.3 ? "A" : null
                );
                readings.Add(
                    random.NextDouble() switch
                    {
                        < 0.1 => reading with { LesionArea = LesionArea.Diffuse },
                        < 0.2 => reading with { LesionPercent = new Percent(100 * random.NextDouble()) },
                        < 0.4 => reading with { Thickness = new Centimetres(1 + random.NextDouble()) },
                        < 0.6 => reading with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, random.Next(0, 4)) },
                        _ => reading,
                    }
                );
            }

            examinations.Add(
                Exam((int)(50 * i * random.NextDouble()) + i, readings) with
                {
                    Stance = random.NextDouble() < 0.2 ? Stance.NonWeightBearing : Stance.WeightBearing,
                }
            );
        }

        return Case(examinations.DistinctBy(examination => examination.Id)) with
        {
            Onset = random.NextDouble() < 0.5 ? Start.AddDays(-random.Next(0, 60)) : null,
        };
    }
}
