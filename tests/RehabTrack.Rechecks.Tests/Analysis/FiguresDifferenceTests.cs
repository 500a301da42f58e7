using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using static RehabTrack.Rechecks.Tests.Healing.CourseBuilder;

namespace RehabTrack.Rechecks.Tests.Analysis;

public sealed class FiguresDifferenceTests
{
    private static readonly CaseCourse Healing = Case(Exam(0, SixLevels()), Exam(60, SixLevels(0.75)), Exam(120, SixLevels(0.55)));

    private static SeenFigures Seen(CaseCourse course, AnalysisSettings? settings = null, params LinkConstraint[] words)
    {
        AnalysisSettings used = settings ?? new AnalysisSettings();
        DateOnly last = course.Examinations.Max(examination => examination.Date);
        return SeenFigures.Of(course, words, CaseAnalyser.Analyse(course, words, used, last));
    }

    private static SeenValue Value(double value, double below, double above) =>
        new()
        {
            ExaminationId = "one",
            Date = Start,
            Value = value,
            Below = below,
            Above = above,
            Lower95 = 0,
            Upper95 = 9,
        };

    [Fact]
    public void What_is_read_again_without_a_change_differs_in_nothing()
    {
        FiguresDifference difference = FiguresDifference.Between(Seen(Healing), Seen(Healing));

        Assert.False(difference.Any);
        Assert.True(difference.IsOnlyMore);
        Assert.Equal(3, difference.Values.Count);
        Assert.All(difference.Values, value => Assert.Equal(value.Then, value.Today));
    }

    [Fact]
    public void What_was_seen_holds_verdict_rate_values_links_and_findings_of_the_analysis()
    {
        CaseAnalysis analysis = CaseAnalyser.Analyse(Healing, [], new AnalysisSettings(), Start.AddDays(120));
        SeenFigures seen = SeenFigures.Of(Healing, [], analysis);

        Assert.Equal((Verdict.Healing, VerdictReason.FallOfSlope, Measure.LesionVolume), (seen.Verdict, seen.Reason, seen.Measure));
        Assert.Equal(analysis.Trend.Window!.RatePercent, seen.RatePercentPer60Days);
        Assert.Equal(
            (analysis.Trend.Window.Lower95Percent, analysis.Trend.Window.Upper95Percent),
            (seen.Lower95Percent!.Value, seen.Upper95Percent!.Value)
        );
        Assert.Equal(analysis.Trend.Series.Select(point => point.Value), seen.Values.Select(value => value.Value));
        Assert.Equal(6, seen.Links.Count);
        Assert.All(seen.Links, track => Assert.Equal(3, track.Places.Count));
        Assert.Equal(analysis.Findings.Select(finding => finding.Kind), seen.Findings.Select(finding => finding.Kind));
        Assert.Equal(InputHash.Of(Healing, [], new AnalysisSettings(), Start.AddDays(120)), seen.InputHash);
    }

    [Fact]
    public void One_standard_error_of_a_volume_is_a_factor_of_its_logarithm()
    {
        CaseAnalysis analysis = CaseAnalyser.Analyse(Healing, [], new AnalysisSettings(), Start.AddDays(120));
        SeenValue first = SeenFigures.Of(Healing, [], analysis).Values[0];
        ExaminationBurden burden = analysis.Burdens[0];

        double factor = Math.Exp(burden.VolumeStandardError!.Value.Value / burden.Volume!.Value.Value);
        Assert.Equal(burden.Volume.Value.Value * factor, first.Above, 9);
        Assert.Equal(burden.Volume.Value.Value / factor, first.Below, 9);
    }

    [Fact]
    public void One_standard_error_of_an_area_is_that_of_the_error_model_with_the_gain()
    {
        // Two readings of one level hold no volume. cv .12, floor .02 cm², gain .03: near .5 cm² sd² = .06² + .02² + .015² = .004225, sd .065.
        CaseCourse course = Case(Exam(0, Row(20, 1.5, 0.5)), Exam(60, Row(20, 1.5, 0.5)));
        SeenFigures seen = Seen(course);

        Assert.Equal(Measure.LesionArea, seen.Measure);
        Assert.Equal(0.065, (seen.Values[0].Above - seen.Values[0].Below) / 2, 3);
    }

    [Fact]
    public void A_grade_has_no_standard_error_and_any_other_grade_is_another()
    {
        CaseCourse course = Case(Exam(0, Graded(2)), Exam(60, Graded(2)));

        SeenValue value = Seen(course).Values[0];

        Assert.Equal((2, 2, 2), (value.Below, value.Value, value.Above));
        Assert.True(value.DiffersFrom(1));

        static Reading Graded(int grade) => Row(20) with { FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, grade) };
    }

    [Theory]
    [InlineData(1.09, false)]
    [InlineData(1.11, true)]
    [InlineData(0.91, false)]
    [InlineData(0.89, true)]
    public void A_value_is_another_when_it_lies_beyond_its_standard_error(double today, bool isAnother)
    {
        SeenFigures then = Seen(Healing) with { Values = [Value(1, 0.9, 1.1)] };

        FiguresDifference difference = FiguresDifference.Between(then, then with { Values = [Value(today, 0, 9)] });

        Assert.Equal(isAnother, difference.Values[0].IsBeyondError);
        Assert.Equal(isAnother, difference.Any);
    }

    [Fact]
    public void A_value_of_then_that_no_examination_has_today_is_shown_without_one()
    {
        SeenFigures then = Seen(Healing);

        ValueDifference gone = FiguresDifference.Between(then, then with { Values = [] }).Values[0];

        Assert.Null(gone.Today);
        Assert.False(gone.IsBeyondError);
    }

    [Fact]
    public void Where_another_measure_speaks_the_values_are_not_laid_side_by_side()
    {
        SeenFigures then = Seen(Healing);

        FiguresDifference difference = FiguresDifference.Between(then, then with { Measure = Measure.LesionArea });

        Assert.True(difference is { IsOtherMeasure: true, Any: true });
        Assert.All(difference.Values, value => Assert.Null(value.Today));
    }

    [Fact]
    public void A_newer_engine_is_named()
    {
        SeenFigures then = Seen(Healing);

        FiguresDifference difference = FiguresDifference.Between(then with { EngineVersion = "1" }, then);

        Assert.True(difference is { IsOtherEngine: true, Any: true, IsOnlyMore: false });
    }

    [Fact]
    public void A_changed_setting_is_named_with_both_numbers_and_one_of_the_rules_is_not()
    {
        AnalysisSettings other = new()
        {
            Error = new MeasurementErrorSettings { LesionAreaCv = 0.2 },
            Linking = new LinkingSettings { LinkFrom = 0.4 },
            Trend = new TrendSettings { WindowExaminations = 4 },
            Rules = new() { TrotAfterDays = 70 },
        };

        FiguresDifference difference = FiguresDifference.Between(Seen(Healing), Seen(Healing, other));

        Assert.Equal(
            [
                new("measurement-error", "lesionAreaCv", 0.12, 0.2),
                new("linking", "linkFrom", 0.45, 0.4),
                new SettingDifference("trend", "windowExaminations", 3, 4),
            ],
            difference.Settings
        );
        Assert.True(difference is { Any: true, IsOnlyMore: false });
    }

    [Fact]
    public void An_examination_added_later_that_turns_the_verdict_is_named_as_more_and_not_as_a_change()
    {
        CaseCourse more = Healing with { Examinations = [.. Healing.Examinations, Exam(180, SixLevels(1.6))] };

        FiguresDifference difference = FiguresDifference.Between(Seen(Healing), Seen(more));

        Assert.True(difference is { IsOtherVerdict: true, Any: true, IsOnlyMore: true });
        Assert.Equal([Start.AddDays(180)], difference.Added.Select(one => one.Date));
    }

    [Fact]
    public void An_amended_examination_a_changed_case_and_one_that_no_longer_counts_are_named()
    {
        CaseCourse today = Healing with { Onset = Start.AddDays(-50), Examinations = [Healing.Examinations[0], Exam(60, SixLevels(0.9))] };

        FiguresDifference difference = FiguresDifference.Between(Seen(Healing), Seen(today));

        Assert.Equal([Start.AddDays(60)], difference.Amended.Select(one => one.Date));
        Assert.Equal([Start.AddDays(120)], difference.Gone.Select(one => one.Date));
        Assert.Empty(difference.Added);
        Assert.True(difference.IsOtherCase);
        Assert.False(difference.IsOnlyMore);
        Assert.Equal([false, true, false], difference.Values.Select(value => value.IsBeyondError));
    }

    [Fact]
    public void A_word_on_a_link_and_the_places_it_moved_are_named()
    {
        PlaceKey first = Places.Of(Healing.Examinations[0])[2].Key;
        PlaceKey second = Places.Of(Healing.Examinations[1])[2].Key;
        PlaceKey third = Places.Of(Healing.Examinations[2])[2].Key;
        LinkConstraint[] words = [new(LinkConstraintKind.Break, first, third), new(LinkConstraintKind.Break, second, third)];

        FiguresDifference difference = FiguresDifference.Between(Seen(Healing), Seen(Healing, null, words));
        FiguresDifference back = FiguresDifference.Between(Seen(Healing, null, words), Seen(Healing));

        Assert.Equal((2, 0), (difference.WordsGiven, difference.WordsWithdrawn));
        Assert.Equal((0, 2), (back.WordsGiven, back.WordsWithdrawn));
        Assert.Contains(third, difference.Relinked);
        Assert.DoesNotContain(first, difference.Relinked);
        Assert.Equal(difference.Relinked, back.Relinked);
        Assert.True(difference is { Any: true, IsOnlyMore: false });
    }

    [Fact]
    public void One_value_beyond_its_error_makes_the_figures_others_though_the_rest_stayed()
    {
        SeenFigures then = Seen(Healing);
        SeenValue other = then.Values[0] with { Value = 3 * then.Values[0].Value };

        Assert.True(FiguresDifference.Between(then, then with { Values = [other, .. then.Values.Skip(1)] }).Any);
    }

    [Fact]
    public void Places_that_moved_are_told_by_date_path_and_level()
    {
        (string Id, int Day)[] visits = [("a", 0), ("b", 0), ("0", 60)];
        SeenFigures then = Seen(Healing) with
        {
            Examinations = [.. visits.Select(visit => new SeenExamination(visit.Id, Start.AddDays(visit.Day), "as it was"))],
        };
        PlaceKey[] ordered =
        [
            .. from visit in visits
            from path in (LinkPath[])[LinkPath.Axial, LinkPath.MedialBranch]
            from level in (double[])[10, 12]
            select new PlaceKey(visit.Id, path, new Centimetres(level)),
        ];
        // Every place a track of its own then, and all of them one track today: but one, each has another company.
        SeenTrack Alone(PlaceKey key) => then.Links[0] with { Places = [key] };
        FiguresDifference difference = FiguresDifference.Between(
            then with
            {
                Links = [.. ordered.Reverse().Select(Alone)],
            },
            then with
            {
                Links = [then.Links[0] with { Places = ordered }],
            }
        );

        Assert.Equal(ordered[..^1], difference.Relinked);
    }

    [Fact]
    public void Tracks_that_only_have_other_numbers_hold_the_same_places()
    {
        SeenFigures then = Seen(Healing);
        SeenFigures renamed = then with { Links = [.. then.Links.Reverse().Select(track => track with { Id = track.Id + "0" })] };

        Assert.Empty(FiguresDifference.Between(then, renamed).Relinked);
    }

    [Fact]
    public void Of_two_tracks_that_became_one_the_places_of_the_smaller_are_named()
    {
        SeenFigures then = Seen(Healing);
        SeenTrack split = then.Links[0] with { Places = [then.Links[0].Places[0]] };
        SeenTrack rest = then.Links[0] with { Places = [.. then.Links[0].Places.Skip(1)] };

        FiguresDifference difference = FiguresDifference.Between(then with { Links = [split, rest, .. then.Links.Skip(1)] }, then);

        Assert.Equal(split.Places, difference.Relinked);
    }
}
