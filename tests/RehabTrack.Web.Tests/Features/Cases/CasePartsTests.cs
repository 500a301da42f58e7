using AngleSharp.Dom;
using Bunit;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Rechecks.Watch;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Watch;
using RehabTrack.Web.Components.Cases;
using RehabTrack.Web.Components.Comparison;
using RehabTrack.Web.Features.Cases;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Cases;

public sealed class CasePartsTests : IAsyncDisposable
{
    private readonly BunitContext _page = new();

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    private IRenderedComponent<VerdictBanner> Banner(CaseCourse course, bool open = false, bool past = false) =>
        _page.Render<VerdictBanner>(banner =>
            banner
                .Add(one => one.Analysis, Invented.Analyse(course))
                .Add(one => one.IsOpen, open)
                .Add(one => one.IsPast, past)
                .Add(one => one.WhyAddress, "/why")
                .Add(one => one.NowAddress, "/now")
        );

    [Theory]
    [InlineData(8, false)]
    [InlineData(0, false)]
    [InlineData(-31, true)]
    public void The_head_of_the_page_says_when_the_recheck_is_due(int days, bool isOverdue)
    {
        DateOnly due = Invented.Today.AddDays(days);
        CaseView injury = Invented.View(Invented.Course()) with { Summary = Invented.Summary(due) };

        IRenderedComponent<CasePageHead> head = _page.Render<CasePageHead>(page =>
            page.Add(one => one.Case, injury).Add(one => one.AsOf, Invented.Today)
        );
        IRenderedComponent<CasePageHead> past = _page.Render<CasePageHead>(page =>
            page.Add(one => one.Case, injury).Add(one => one.AsOf, Invented.Today.AddDays(-90))
        );

        Assert.Contains(Figures.Date(due), head.Markup, StringComparison.Ordinal);
        Assert.Equal(isOverdue, head.FindAll(".mark.amber").Count == 1);
        Assert.DoesNotContain(Figures.Date(due), past.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_closed_case_says_how_it_ended_when_by_whom_and_with_what_outcome()
    {
        CaseView closed = Invented.View(Invented.Course()) with
        {
            IsOpen = false,
            Closing = new CaseClosing(CaseEnd.Resolved, Invented.Today, "Back in full work.", "A. Vet"),
        };

        string said = _page
            .Render<CasePageHead>(page => page.Add(one => one.Case, closed).Add(one => one.AsOf, Invented.Today))
            .Find(".case-words")
            .TextContent;

        Assert.Contains(
            $"Resolved: no more rechecks, {Figures.Date(Invented.Today)}, by A. Vet. Back in full work.",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_verdict_is_said_in_one_sentence_before_its_figures()
    {
        CaseCourse course = Invented.Course();
        Trend trend = Invented.Analyse(course).Trend;
        Assert.Equal(Verdict.Healing, trend.Verdict);

        IElement banner = Banner(course).Find("section.verdict");

        Assert.Equal(VerdictSentences.Headline(trend), banner.QuerySelector(".say")!.TextContent.Trim());
        Assert.Contains("good", banner.QuerySelector(".say .mark")!.ClassList);
        Assert.Contains(VerdictSentences.Basis(trend), banner.TextContent, StringComparison.Ordinal);
        Assert.Contains("good", banner.ClassList);
        Assert.Contains(CasePage.Caution, banner.TextContent, StringComparison.Ordinal);
        Assert.Equal("/why", banner.QuerySelector("a[aria-expanded=false]")!.GetAttribute("href"));
    }

    [Theory]
    [InlineData(1.0, "amber")]
    [InlineData(1.6, "red")]
    public void A_course_that_needs_a_person_looks_so_and_says_so(double growth, string look)
    {
        CaseCourse course = Invented.Course(5, growth);

        IElement banner = Banner(course).Find("section.verdict");

        Assert.Contains(look, banner.ClassList);
        Assert.Contains(look, banner.QuerySelector(".say .mark")!.ClassList);
        Assert.StartsWith(
            Names.AsTitle(Names.Of(Invented.Analyse(course).Trend.Verdict)),
            banner.QuerySelector(".say")!.TextContent.Trim(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Why_opens_the_rule_the_examinations_and_the_thresholds_with_their_source()
    {
        CaseCourse course = Invented.Course();
        Trend trend = Invented.Analyse(course).Trend;

        IRenderedComponent<VerdictBanner> banner = Banner(course, open: true);

        Assert.Contains(GroundWords.RuleOf(trend.Reason), banner.Find(".ground").TextContent, StringComparison.Ordinal);
        Assert.Equal(course.Examinations.Count, banner.FindAll(".ground tbody tr").Count);
        Assert.Equal(GroundWords.DecidingOf(trend.Measure, new TrendSettings()).Count, banner.FindAll(".ground .thresholds dt").Count);
        Assert.NotEmpty(banner.FindAll("a[href='/about-the-verdict#where-it-fails']"));
        Assert.NotEmpty(banner.FindAll("a[href='/about/use']"));
    }

    [Fact]
    public void Why_shows_the_thresholds_in_force_and_the_bound_that_was_held_against_the_rate_of_the_plan()
    {
        // A flat course while the plan permits trot, in a practice that asks for a quarter in 60 days then, of four examinations.
        CaseCourse course = Invented.Course(5, 1.0) with
        {
            PlanPhases = [new PlanPhaseStart(Invented.Today.AddDays(-300), PlanPhase.Trot)],
        };
        AnalysisSettings own = new()
        {
            Trend = new TrendSettings { WindowExaminations = 4, SlowestAcceptableAtTrotLogPer60Days = Math.Log(0.75) },
        };
        CaseAnalysis analysis = CaseAnalyser.Analyse(course, [], own, Invented.Today);
        SlopeFigures window = analysis.Trend.Window!;
        Assert.Equal((Verdict.Stalled, Math.Log(0.75)), (analysis.Trend.Verdict, analysis.Trend.SlowestAcceptableLogPer60Days));

        string ground = _page.Render<VerdictGround>(page => page.Add(one => one.Analysis, analysis)).Find(".ground").TextContent;

        string bound = Figures.Number(window.LogPer60Days - (own.Trend.StallZ * window.StandardError), "0.000");
        Assert.Contains(
            string.Format(
                TextCulture.Default,
                CasePage.BoundAgainstSlowest,
                bound,
                Figures.Number(Math.Log(0.75), "0.000"),
                Figures.SignedPercent(-25)
            ),
            ground,
            StringComparison.Ordinal
        );
        Assert.Contains("Set by this practice. Usual: 3", ground, StringComparison.Ordinal);
        Assert.Contains(Figures.Number(Math.Log(0.75), "0.####"), ground, StringComparison.Ordinal);
        Assert.Equal(2, ground.Split("Set by this practice.").Length - 1);
    }

    private IRenderedComponent<ExaminationsTable> Table(CaseCourse course) =>
        _page.Render<ExaminationsTable>(table =>
            table.Add(one => one.Case, Invented.View(course)).Add(one => one.Analysis, Invented.Analyse(course))
        );

    [Fact]
    public void A_case_of_one_lesion_has_one_table_of_examinations() => Assert.Single(Table(Invented.Course()).FindAll("table"));

    [Fact]
    public void Lesions_in_body_and_branch_stand_below_the_examinations_each_with_its_class()
    {
        // The branch: .3 of 1.0 cm² at its middle level, so a section of 30 % and a total of 10 %.
        IEnumerable<Reading> Branch(Examination examination) =>
            new double[] { 30, 32, 34 }.Select(level => new Reading
            {
                Id = $"{examination.Id}-branch-{level}",
                Part = Part.MedialBranch,
                Level = new Centimetres(level),
                LigamentArea = new SquareCentimetres(1),
                LesionArea = LesionArea.Measured(new SquareCentimetres(level == 32 ? 0.3 : 0)),
                Measurer = "H. Brandt",
            });
        CaseCourse body = Invented.Course(2);
        CaseCourse course = body with
        {
            Examinations = [.. body.Examinations.Select(one => one with { Readings = [.. one.Readings, .. Branch(one)] })],
        };

        IElement table = Table(course).FindAll("table")[^1];

        IElement[] rows = [.. table.QuerySelectorAll("tbody tr")];
        Assert.Equal(
            ["Lesion in the body", "Lesion in the body", "Lesion in the medial branch", "Lesion in the medial branch"],
            rows.Select(row => row.QuerySelector("th")!.TextContent.Trim())
        );
        Assert.Equal(Figures.Date(course.Examinations[1].Date), rows[0].QuerySelector("td")!.TextContent.Trim());
        string Cell(int row, string column) => rows[row].QuerySelector($"td[data-label='{column}']")!.TextContent.Trim();
        Assert.Equal(string.Format(TextCulture.Default, CasePage.SeveritySection, 2), Cell(2, CasePage.ColumnSeverity));
        Assert.Equal(CasePage.SeverityTotal_1, Cell(1, CasePage.ColumnSeverity));
        Assert.Equal(Figures.ExactPercent(new Percent(10)), Cell(3, CasePage.ColumnTotal));
        Assert.Contains(Figures.Percent(new Percent(30)), Cell(3, CasePage.ColumnWorst), StringComparison.Ordinal);
        Assert.Contains("0.60", Cell(3, CasePage.ColumnVolume), StringComparison.Ordinal);
        // No lesion level was missed: no such column.
        Assert.Null(table.QuerySelector($"td[data-label='{CasePage.ColumnMissed}']"));
    }

    [Fact]
    public void Two_named_lesions_beside_one_in_a_branch_have_their_part_above_them()
    {
        Reading Row(Part part, double level, double lesion, string? name) =>
            new()
            {
                Id = $"{part}-{level}",
                Part = part,
                Level = new Centimetres(level),
                LigamentArea = new SquareCentimetres(1.4),
                LesionArea = LesionArea.Measured(new SquareCentimetres(lesion)),
                Lesion = name,
            };
        CaseCourse course = Invented.Course(1) with
        {
            Examinations =
            [
                Invented.Examination(1) with
                {
                    Readings =
                    [
                        Row(Part.Body, 16, 0, "A"),
                        Row(Part.Body, 18, 0.4, "A"),
                        Row(Part.Body, 20, 0, "A"),
                        Row(Part.Body, 24, 0.2, "B"),
                        Row(Part.Body, 26, 0, "B"),
                        Row(Part.LateralBranch, 32, 0.2, null),
                    ],
                },
            ],
        };

        Assert.Equal(
            ["All of origin and body", "Lesion A, body", "Lesion B, body", "Lesion in the lateral branch"],
            Table(course).FindAll("table")[^1].QuerySelectorAll("tbody th").Select(head => head.TextContent.Trim())
        );
    }

    [Fact]
    public void Every_rule_has_a_sentence() =>
        Assert.All(Enum.GetValues<VerdictReason>(), reason => Assert.NotEmpty(GroundWords.RuleOf(reason)));

    [Fact]
    public void An_earlier_date_is_named_with_the_way_back()
    {
        IRenderedComponent<VerdictBanner> banner = Banner(Invented.Course(), past: true);

        Assert.Contains(Figures.Date(Invented.Today), banner.Markup, StringComparison.Ordinal);
        Assert.NotNull(banner.Find("a[href='/now']"));
        Assert.Empty(Banner(Invented.Course()).FindAll("a[href='/now']"));
    }

    [Fact]
    public void Findings_show_what_needs_a_person_first_with_a_way_to_the_place()
    {
        Finding red = new()
        {
            Kind = FindingKind.NewlyAbnormalLevel,
            Severity = FindingSeverity.Red,
            TrackId = "axial-1",
        };
        Finding settled = red with { Severity = FindingSeverity.Amber, IsEarlier = true };
        Finding note = new() { Kind = FindingKind.OnsetUnknown, Severity = FindingSeverity.Note };

        IRenderedComponent<FindingsList> list = _page.Render<FindingsList>(findings =>
            findings
                .Add(one => one.Standing, [Standing(red), Standing(note)])
                .Add(one => one.Earlier, [settled])
                .Add(one => one.AddressOf, finding => finding.TrackId is null ? null : "/place")
        );

        IElement first = Assert.Single(list.FindAll("section > ul > li"));
        Assert.Contains("red", first.QuerySelector(".mark")!.ClassList);
        Assert.Equal(Names.Of(FindingKind.NewlyAbnormalLevel), first.QuerySelector(".mark")!.TextContent);
        Assert.Contains(FindingSentences.Of(red), first.TextContent, StringComparison.Ordinal);
        Assert.NotNull(first.QuerySelector("a[href='/place']"));
        Assert.Equal(2, list.FindAll("details li").Count);
        Assert.Empty(list.FindAll("details .mark.amber"));
    }

    [Fact]
    public void What_was_acknowledged_is_folded_under_a_count_with_who_and_why()
    {
        WatchedFinding red = Standing(new() { Kind = FindingKind.Worsening, Severity = FindingSeverity.Red });
        WatchedFinding known = red with { Acknowledgement = new("Tamsin Orrel", DateTime.UnixEpoch, "seen on the farm") };

        IRenderedComponent<FindingsList> list = _page.Render<FindingsList>(findings =>
            findings
                .Add(one => one.Standing, [known])
                .Add(one => one.TimeZone, "Europe/Vienna")
                .Add(one => one.AddressOf, _ => null)
                .Add(one => one.MayAcknowledge, true)
        );

        Assert.Empty(list.FindAll("section > ul > li"));
        IElement folded = list.Find("details.acknowledged");
        Assert.Equal(WatchTexts.AcknowledgedOne, folded.QuerySelector("summary")!.TextContent);
        Assert.Contains("Tamsin Orrel", folded.TextContent, StringComparison.Ordinal);
        Assert.Contains("seen on the farm", folded.TextContent, StringComparison.Ordinal);
        Assert.Empty(list.FindAll("button"));
    }

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public void Only_where_it_may_be_acknowledged_is_it_offered(bool may, int buttons) =>
        Assert.Equal(
            buttons,
            _page
                .Render<FindingsList>(findings =>
                    findings
                        .Add(one => one.Standing, [Standing(new() { Kind = FindingKind.Worsening, Severity = FindingSeverity.Red })])
                        .Add(one => one.AddressOf, _ => null)
                        .Add(one => one.MayAcknowledge, may)
                )
                .FindAll("button")
                .Count
        );

    private static WatchedFinding Standing(Finding finding) =>
        new(
            new StandingFinding
            {
                Kind = StandingKind.OfCase,
                Severity = finding.Severity,
                Since = Invented.Today,
                Next = StandingStep.LookAtCase,
                OfCase = finding,
            },
            null
        );

    [Fact]
    public void Without_anything_to_do_it_says_so() =>
        Assert.Contains(
            CasePage.FindingsNone,
            _page.Render<FindingsList>(findings => findings.Add(one => one.Standing, []).Add(one => one.AddressOf, _ => null)).Markup,
            StringComparison.Ordinal
        );

    private IRenderedComponent<ReadingPanel> Panel(CaseCourse course, int examination, double level, int? compare = null, bool vet = true)
    {
        CaseAnalysis analysis = Invented.Analyse(course);
        Rung rung = analysis
            .Links.Tracks.SelectMany(track => track.Steps.Select(step => new Rung(track, step)))
            .Single(one =>
                one.Step.ExaminationId == Invented.ExaminationId(examination).ToString()
                && one.Step.Place.Level.Position.Value.Equals(level)
            );
        return _page.Render<ReadingPanel>(panel =>
            panel
                .Add(one => one.Rung, rung)
                .Add(one => one.Course, course)
                .Add(one => one.Settings, analysis.Settings)
                .Add(one => one.Tracks, analysis.Links.Tracks)
                .Add(
                    one => one.Compared,
                    compare is { } other
                        ? rung.Track.Steps.Single(step => step.ExaminationId == Invented.ExaminationId(other).ToString())
                        : null
                )
                .Add(one => one.MayChangeLinks, vet)
                .Add(one => one.CanPin, true)
                .Add(one => one.CloseAddress, "/close")
                .Add(one => one.ExaminationAddress, "/examination")
                .Add(one => one.CompareAddress, step => step is null ? "/alone" : $"/compare/{step.Date:yyyy-MM-dd}")
        );
    }

    [Fact]
    public void A_chosen_rung_shows_every_number_and_who_measured()
    {
        string text = Panel(Invented.Course(), 1, 22).Find("section").TextContent;

        Assert.Contains("Body, 22\u00a0cm", text, StringComparison.Ordinal);
        Assert.Contains("1.40\u00a0cm²", text, StringComparison.Ordinal);
        Assert.Contains("0.50\u00a0cm²", text, StringComparison.Ordinal);
        Assert.Contains("35.7\u00a0%", text, StringComparison.Ordinal);
        Assert.Contains("H. Brandt", text, StringComparison.Ordinal);
        Assert.Contains(CasePage.NotRecorded, text, StringComparison.Ordinal);
        Assert.Contains(CasePage.LinkFirst, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Nought_is_said_as_looked_and_none_seen() =>
        Assert.Contains(CasePage.LesionNone, Panel(Invented.Course(), 1, 18).Markup, StringComparison.Ordinal);

    [Fact]
    public void The_other_dates_of_the_place_are_one_press_away_and_a_comparison_judges_against_the_error()
    {
        IRenderedComponent<ReadingPanel> panel = Panel(Invented.Course(), 4, 22);
        Assert.Equal(
            ["/compare/2026-01-12", "/compare/2026-03-13", "/compare/2026-05-12"],
            panel.FindAll("a.date").Select(link => link.GetAttribute("href"))
        );

        IRenderedComponent<ReadingPanel> compared = Panel(Invented.Course(), 4, 22, compare: 1);
        string table = compared.Find("table.comparison").TextContent;
        Assert.Contains("0.50\u00a0cm²", table, StringComparison.Ordinal);
        Assert.Contains("down by more than the error", table, StringComparison.Ordinal);
        Assert.Equal("/alone", compared.Find("a.date[aria-current=true]").GetAttribute("href"));
    }

    [Fact]
    public void A_chosen_place_is_judged_among_all_that_both_dates_read()
    {
        string together = Panel(Invented.Course(), 4, 22, compare: 1).Find(".reading-panel").TextContent;

        Assert.Contains("5 levels are judged together here", together, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_who_may_change_links_is_offered_to()
    {
        Assert.Equal(2, Panel(Invented.Course(), 2, 22).FindAll("button").Count);
        Assert.Empty(Panel(Invented.Course(), 2, 22, vet: false).FindAll("button"));
    }

    [Fact]
    public void A_place_can_be_pinned_to_every_track_of_its_path_and_kept_apart_from_its_own()
    {
        CaseCourse course = Invented.Course();
        CaseAnalysis analysis = Invented.Analyse(course);
        Track track = analysis.Links.Tracks.First(one => one.Steps[0].Place.Level.Position.Value.Equals(22));
        Rung rung = new(track, track.Steps[2]);

        Assert.Equal(
            analysis.Links.Tracks.Select(one => one.Id).Order(StringComparer.Ordinal),
            LinkChoice.ToPin(analysis, rung).Select(choice => choice.Track.Id).Order(StringComparer.Ordinal)
        );
        Assert.All(LinkChoice.ToPin(analysis, rung), choice => Assert.Equal(track.Steps[1].Date, choice.Step.Date));
        Assert.Equal(
            [track.Steps[1].Date, track.Steps[0].Date, track.Steps[3].Date],
            LinkChoice.ToBreak(rung).Select(choice => choice.Step.Date)
        );
    }

    [Theory]
    [InlineData(1.0, 1.04, "+4\u00a0%, cannot tell: error up to +20\u00a0%")]
    [InlineData(1.0, 0.7, "−30\u00a0%, down by more than the error (−20\u00a0%)")]
    [InlineData(1.0, 1.5, "+50\u00a0%, up by more than the error (+20\u00a0%)")]
    [InlineData(1.0, 1.0, "no change")]
    public void A_change_is_said_against_the_error(double before, double now, string said) =>
        Assert.Equal(
            said,
            ComparisonWords.Say(
                new SizeChange
                {
                    Size = MeasuredSize.LigamentArea,
                    Before = before,
                    Now = now,
                    DetectableBelow = 0.8,
                    DetectableAbove = 1.2,
                }
            )
        );

    [Fact]
    public void A_share_changes_in_points_and_what_was_not_there_is_new()
    {
        SizeChange share = new()
        {
            Size = MeasuredSize.LesionPercent,
            Before = 26,
            Now = 21,
            DetectableBelow = 14,
            DetectableAbove = 45,
        };
        SizeChange fresh = new()
        {
            Size = MeasuredSize.LesionArea,
            Before = 0,
            Now = 0.4,
            DetectableBelow = 0,
            DetectableAbove = 0.1,
        };

        Assert.Equal("−5 points, cannot tell: error up to −12 points", ComparisonWords.Say(share));
        Assert.Equal("new, more than the error", ComparisonWords.Say(fresh));
        Assert.Equal("cannot tell: error up to 0.10\u00a0cm²", ComparisonWords.Say(fresh with { Now = 0.05 }));
    }

    [Fact]
    public void The_line_under_the_name_tells_age_injury_day_and_measurer() =>
        Assert.Equal(
            "14-year-old mare · injured 2\u00a0Dec\u00a02025 · day 251 since baseline · measured by H. Brandt throughout",
            CaseFacts.Line(Invented.View(Invented.Course()), Invented.Today)
        );
}
