using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Web.Components.Cases;
using RehabTrack.Web.Tests.Features.Cases;

namespace RehabTrack.Web.Tests.Components.Cases;

public sealed class SignedFiguresWordsTests
{
    private static readonly SeenFigures Then = Seen(Invented.Course(3));

    private static SeenFigures Seen(CaseCourse course) => SeenFigures.Of(course, [], Invented.Analyse(course));

    private static (string Look, string Short, IReadOnlyList<string> Differences, IReadOnlyList<string> Causes) Say(SeenFigures today)
    {
        FiguresDifference difference = FiguresDifference.Between(Then, today);
        return (
            SignedFiguresWords.LookOf(difference),
            SignedFiguresWords.InShort(difference),
            [.. SignedFiguresWords.Differences(difference, Then, today).Select(Plain)],
            [.. SignedFiguresWords.Causes(difference).Select(Plain)]
        );
    }

    private static string Plain(string sentence) => sentence.Replace('\u00a0', ' ');

    [Fact]
    public void Nothing_changed_is_said_in_two_words()
    {
        var said = Say(Then);

        Assert.Equal(("good", "as today"), (said.Look, said.Short));
        Assert.Empty(said.Differences);
        Assert.Empty(said.Causes);
    }

    [Fact]
    public void A_verdict_turned_by_a_later_examination_alone_alarms_nobody()
    {
        SeenFigures today = Then with
        {
            Verdict = Verdict.Stalled,
            Examinations = [.. Then.Examinations, new SeenExamination("later", new DateOnly(2026, 7, 11), "x")],
        };

        var said = Say(today);

        Assert.Equal(("note", "more examined since"), (said.Look, said.Short));
        Assert.Equal(["The verdict was “healing”; today it is “no progress”."], said.Differences);
        Assert.Equal(
            ["One examination was added (11 Jul 2026). Later examinations move the places of the earlier ones a little."],
            said.Causes
        );
    }

    [Fact]
    public void An_amended_examination_names_the_value_it_moved()
    {
        CaseCourse course = Invented.Course(3);
        var said = Say(Seen(course with { Examinations = [.. course.Examinations.Take(2), Invented.Examination(3, 0.95)] }));

        Assert.Equal(("amber", "today’s differ"), (said.Look, said.Short));
        Assert.Contains("The value of 12 May 2026 differs by more than its standard error.", said.Differences);
        Assert.Equal(["The examination of 12 May 2026 was amended."], said.Causes);
    }

    [Fact]
    public void Settings_engine_links_and_measure_are_each_named_in_a_sentence()
    {
        AnalysisSettings settings = new()
        {
            Trend = new TrendSettings { WindowExaminations = 4, UsualIntervalDays = 30 },
        };
        SeenTrack[] links = [.. Then.Links];
        SeenFigures today = Then with
        {
            EngineVersion = "9",
            Settings = settings,
            Measure = Measure.LesionArea,
            Links =
            [
                links[0] with
                {
                    Places = [.. links[0].Places.Skip(1), links[1].Places[0]],
                },
                links[1] with
                {
                    Places = [.. links[1].Places.Skip(1), links[0].Places[0]],
                },
                .. links.Skip(2),
            ],
        };

        var said = Say(today);

        Assert.Equal(
            [
                "Then the verdict rested on lesion volume, today on lesion area at the worst level: the values are not laid side by side.",
                "2 places are linked otherwise: 18 cm on 12 Jan 2026, 20 cm on 12 Jan 2026.",
                $"Engine {CaseAnalyser.EngineVersion} computed then; engine 9 computes today.",
                "A setting of trend and verdict was changed.",
            ],
            said.Differences.Where(sentence => !sentence.StartsWith("A setting was", StringComparison.Ordinal))
        );
        Assert.EndsWith(
            ": 3, today 4.",
            said.Differences.Single(sentence => sentence.StartsWith("A setting was", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Examinations_that_no_longer_count_words_on_links_and_a_changed_case_are_told()
    {
        CaseCourse course = Invented.Course(3);
        SeenFigures today = Then with
        {
            CaseFingerprint = "x",
            Examinations = [Then.Examinations[0]],
            LinkWords =
            [
                new(
                    RehabTrack.Rechecks.Linking.LinkConstraintKind.Pin,
                    Places.Of(course.Examinations[0])[0].Key,
                    Places.Of(course.Examinations[1])[0].Key
                ),
            ],
        };

        Assert.Equal(
            [
                "The examinations of 13 Mar 2026, 12 May 2026 no longer count.",
                "A person said a word on a link.",
                "Limb, structure, landmark, dates or target of the case were changed.",
            ],
            Say(today).Causes
        );
    }

    [Fact]
    public void A_value_stands_with_its_standard_error_and_a_grade_alone()
    {
        SeenValue value = Then.Values[0] with { Value = 2.02, Below = 1.81, Above = 2.23 };

        Assert.Equal("2.02 cm³ ± 0.21 cm³", Plain(SignedFiguresWords.Value(Measure.LesionVolume, value)));
        Assert.Equal("2", SignedFiguresWords.Value(Measure.Grades, value));
    }

    [Theory]
    [InlineData(2.02, "the same")]
    [InlineData(2.1, "within its standard error")]
    [InlineData(2.3, "more than its standard error")]
    [InlineData(null, "not compared")]
    public void A_value_is_laid_against_todays(double? today, string said)
    {
        SeenValue then = Then.Values[0] with { Value = 2.02, Below = 1.81, Above = 2.23 };

        Assert.Equal(said, SignedFiguresWords.Say(new ValueDifference(then, today is { } value ? then with { Value = value } : null)));
    }
}
