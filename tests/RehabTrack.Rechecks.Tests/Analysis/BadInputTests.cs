using System.Text.Json;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Analysis;

/// <summary>Input that is thin, odd or too much: a sensible answer or a clear reason, never an exception, never a number that is none.</summary>
public sealed class BadInputTests
{
    private static readonly Dictionary<string, CaseCourse> Courses = new(StringComparer.Ordinal)
    {
        ["no examination"] = Case(),
        ["an examination without a reading"] = Case(Exam(0), Exam(60, SixLevels())),
        ["one examination"] = Case(Exam(0, SixLevels())),
        ["one examination of one level"] = Case(Exam(0, Row(20, 1.5, 0.4))),
        ["two on one day"] = Case(Exam(0, SixLevels()), OnTheSameDay(Exam(0, SixLevels(0.4)))),
        ["two on one day and one later"] = Case(Exam(0, SixLevels()), OnTheSameDay(Exam(0, SixLevels(1.4))), Exam(60, SixLevels(0.4))),
        ["three on one day"] = Case(
            Exam(0, SixLevels()),
            OnTheSameDay(Exam(0, SixLevels(0.7))),
            OnTheSameDay(Exam(0, SixLevels(0.5)), "c")
        ),
        ["one day apart"] = Case(Exam(0, SixLevels(0.001)), Exam(1, SixLevels(2)), Exam(2, SixLevels(0.001))),
        ["all zero"] = Times(5, _ => SixLevels(0)),
        ["all zero, then a lesion"] = Times(4, i => SixLevels(i < 3 ? 0 : 1)),
        ["a lesion, then all zero"] = Times(5, i => SixLevels(i == 0 ? 1 : 0)),
        ["levels in reverse"] = Times(4, i => SixLevels(Math.Pow(0.7, i)).Reverse()),
        ["equal levels"] = Times(3, i => [Row(20, 1.5, 0.5 - (0.1 * i)), Row(20, 1.4, 0.4 - (0.1 * i), measurer: "Bo"), Row(22, 1.5, 0)]),
        ["equal levels, nothing else"] = Times(3, i => [Row(20, 1.5, 0.5), Row(20, 1.5, 0.5), Row(20, 1.5, 0.5)]),
        ["equal levels on two paths"] = Times(3, i => [Row(20, 1.5, 0.5), Row(20, 0.8, 0.2, Part.MedialBranch)]),
        ["a lesion at the end level"] = Times(4, i => [Row(10, 1.4, 0), Row(12, 1.5, 0.3), Row(14, 1.5, 0.6)]),
        ["a lesion at every level"] = Times(4, i => [Row(10, 1.4, 0.2), Row(12, 1.5, 0.3), Row(14, 1.5, 0.6)]),
        ["percent over 100"] = Times(4, i => [Row(20) with { LesionPercent = new Percent(140 - (10 * i)) }]),
        ["a lesion larger than its ligament"] = Times(4, i => [Row(20, 0.5, 1.5), Row(22, 1.5, 0)]),
        ["lesion area without ligament area"] = Times(4, i => [Row(18, null, 0), Row(20, null, 0.5 - (0.1 * i)), Row(22, null, 0)]),
        ["ligament area without lesion area"] = Times(4, i => [Row(18, 1.4), Row(20, 1.6), Row(22, 1.3)]),
        ["diffuse everywhere"] = Times(4, i => [Row(20, 1.5) with { LesionArea = LesionArea.Diffuse }]),
        ["grades of different scales"] = Times(
            4,
            i => [Row(20) with { Echogenicity = new Grade(i % 2 == 0 ? GradeScales.Echogenicity0To3 : GradeScales.Echogenicity0To4, 2) }]
        ),
        ["another stance every time"] = Times(4, i => SixLevels(), i => i % 2 == 0 ? Stance.WeightBearing : Stance.NonWeightBearing),
        ["enormous and tiny"] = Times(4, i => [Row(20, 1e6, 1e5), Row(22, 1e-9, 1e-12), Row(24, 1e-300, 0)]),
        ["forty examinations"] = Times(40, i => SixLevels(Math.Pow(0.97, i))),
        ["two hundred levels"] = Times(
            3,
            i => Enumerable.Range(0, 200).Select(level => Row(0.3 * level, 1.5, level is > 90 and < 110 ? 0.5 : 0))
        ),
    };

    public static TheoryData<string> Names => [.. Courses.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_answer_is_given_and_can_be_written_as_json(string name)
    {
        CaseCourse course = Courses[name];
        CaseAnalysis analysis = Analyse(course);

        // The writer refuses what is not a number.
        Assert.NotEmpty(JsonSerializer.Serialize(analysis.Burdens));
        Assert.NotEmpty(JsonSerializer.Serialize(analysis.Trend));
        Assert.NotEmpty(JsonSerializer.Serialize(analysis.Lesions));
        Assert.NotEmpty(JsonSerializer.Serialize(analysis.Findings));
        Assert.NotEmpty(JsonSerializer.Serialize(analysis.Links));
        Assert.NotEmpty(JsonSerializer.Serialize(SeenFigures.Of(course, [], analysis)));
        Assert.Equal(course.Examinations.Count, analysis.Burdens.Count);
        Assert.Equal(
            course.Examinations.Sum(examination => Places.Of(examination).Count),
            analysis.Links.Tracks.Sum(track => track.Steps.Count)
        );
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Levels_of_neighbouring_examinations_can_be_compared(string name)
    {
        CaseCourse course = Courses[name];
        foreach ((Examination before, Examination now) in course.Examinations.Zip(course.Examinations.Skip(1)))
        {
            (Place, Place)[] places =
            [
                .. from track in Analyse(course).Links.Tracks
                let first = track.Steps.FirstOrDefault(step => step.ExaminationId == before.Id)
                let second = track.Steps.FirstOrDefault(step => step.ExaminationId == now.Id)
                where first is not null && second is not null
                select (first.Place, second.Place),
            ];

            Assert.NotEmpty(
                JsonSerializer.Serialize(
                    LevelComparison.Between(places, new MeasurementErrorSettings(), course.Limb, Looks.Neighbouring(3))
                )
            );
            if (course.Examinations.Count > 10)
            {
                return;
            }
        }
    }

    [Theory]
    [InlineData("no examination", VerdictReason.NoMeasure)]
    [InlineData("one examination", VerdictReason.OnlyOneExamination)]
    [InlineData("one examination of one level", VerdictReason.OnlyOneExamination)]
    [InlineData("two on one day", VerdictReason.TwoBeyondErrorDown)]
    [InlineData("diffuse everywhere", VerdictReason.NoMeasure)]
    [InlineData("all zero", VerdictReason.NoMeasure)]
    [InlineData("ligament area without lesion area", VerdictReason.NoMeasure)]
    public void What_cannot_be_judged_says_why(string name, VerdictReason reason)
    {
        Trend trend = Analyse(Courses[name]).Trend;

        Assert.Equal((Verdict.NotYetReadable, reason), (trend.Verdict, trend.Reason));
    }

    [Theory]
    [InlineData("two on one day")]
    [InlineData("three on one day")]
    public void Examinations_of_one_day_have_no_rate(string name) => Assert.Null(Analyse(Courses[name]).Trend.Window);

    [Theory]
    [InlineData(-60, 1)]
    [InlineData(181, 0)]
    [InlineData(4000, 0)]
    public void An_onset_after_every_examination_is_a_slip_and_taken_as_not_known(int day, int known)
    {
        CaseCourse course = Times(4, i => SixLevels(Math.Pow(0.7, i))) with { Onset = Start.AddDays(day) };

        CaseAnalysis analysis = Analyse(course);

        Assert.Equal(Verdict.Healing, analysis.Trend.Verdict);
        Assert.DoesNotContain(analysis.Findings, finding => finding.Kind == FindingKind.AcutePhaseLeftOut);
        Assert.Equal(known == 0, analysis.Findings.Any(finding => finding.Kind == FindingKind.OnsetUnknown));
    }

    [Fact]
    public void An_onset_between_two_examinations_starts_the_trend_after_it()
    {
        CaseCourse course = Times(4, i => SixLevels(Math.Pow(0.7, i))) with { Onset = Start.AddDays(30) };

        Assert.Equal([false, true, true, true], Analyse(course).Trend.Series.Select(point => point.InTrend));
    }

    [Fact]
    public void Levels_in_reverse_say_what_they_say_in_order() =>
        Assert.Equal(
            JsonSerializer.Serialize(Analyse(Times(4, i => SixLevels(Math.Pow(0.7, i)))).Trend),
            JsonSerializer.Serialize(Analyse(Courses["levels in reverse"]).Trend)
        );

    [Fact]
    public void Equal_levels_of_one_part_are_one_place_with_the_mean_of_its_tracings()
    {
        CaseAnalysis analysis = Analyse(Courses["equal levels"]);

        Assert.Equal(2, analysis.Links.Tracks.Count);
        Assert.Equal(0.45, analysis.Links.Tracks[0].Steps[0].Place.LesionArea.MeasuredArea!.Value.Value, 12);
        Assert.Equal(2, Analyse(Courses["equal levels on two paths"]).Links.Tracks.Count);
    }

    [Theory]
    [InlineData("a lesion at the end level")]
    [InlineData("a lesion at every level")]
    public void A_lesion_at_an_end_level_makes_the_volume_a_lower_bound(string name)
    {
        CaseAnalysis analysis = Analyse(Courses[name]);

        Assert.All(analysis.Burdens, burden => Assert.True(burden.VolumeIsLowerBound));
        Assert.Contains(analysis.Findings, finding => finding.Kind == FindingKind.VolumeLowerBound);
    }

    [Fact]
    public void Lesion_areas_without_ligament_areas_still_make_a_trend_and_no_class()
    {
        CaseAnalysis analysis = Analyse(Courses["lesion area without ligament area"]);

        Assert.Equal(Measure.LesionVolume, analysis.Trend.Measure);
        Assert.All(analysis.Burdens, burden => Assert.Null(burden.TotalPercent));
        Assert.All(analysis.Burdens, burden => Assert.Null(burden.Severity));
    }

    [Theory]
    [InlineData(140, "percent-out-of-range")]
    [InlineData(-1, "percent-out-of-range")]
    [InlineData(double.NaN, "percent-out-of-range")]
    public void A_share_that_is_none_is_refused_with_its_limits(double percent, string code)
    {
        Problem problem = Assert.Single(
            ReadingRules.Check(
                new ReadingDraft
                {
                    Part = Part.Body,
                    LevelCm = 20,
                    LesionPercent = percent,
                }
            )
        );

        Assert.Equal((ReadingFields.LesionPercent, code), (problem.Field, problem.Code));
        Assert.Equal(["0", "100"], problem.Arguments.Skip(1));
    }

    [Fact]
    public void Forty_examinations_of_a_lesion_that_shrinks_slowly_are_read_whole()
    {
        CaseAnalysis analysis = Analyse(Courses["forty examinations"]);

        Assert.Equal(40, analysis.Trend.Series.Count);
        Assert.All(analysis.Links.Tracks, track => Assert.Equal(40, track.Steps.Count));
    }

    [Fact]
    public void Two_hundred_levels_are_linked_each_to_its_own()
    {
        CaseAnalysis analysis = Analyse(Courses["two hundred levels"]);

        Assert.Equal(200, analysis.Links.Tracks.Count);
        Assert.All(analysis.Links.Tracks, track => Assert.Equal(3, track.Steps.Count));
    }

    private static CaseAnalysis Analyse(CaseCourse course) =>
        CaseAnalyser.Analyse(
            course,
            [],
            new AnalysisSettings(),
            course.Examinations.Select(examination => examination.Date).DefaultIfEmpty(Start).Max()
        );

    private static CaseCourse Times(int count, Func<int, IEnumerable<Reading>> readings, Func<int, Stance>? stance = null) =>
        Case(
            Enumerable
                .Range(0, count)
                .Select(index =>
                    Exam(60 * index, [.. readings(index).Select((reading, row) => reading with { Id = $"{row}" })]) with
                    {
                        Stance = stance?.Invoke(index) ?? Stance.WeightBearing,
                    }
                )
        );

    private static Examination OnTheSameDay(Examination examination, string name = "b") =>
        examination with
        {
            Id = examination.Id + name,
            Name = name,
            Readings = [.. examination.Readings.Select(reading => reading with { Id = reading.Id + name })],
        };
}
