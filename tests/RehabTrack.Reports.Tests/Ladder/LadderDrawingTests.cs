using System.Xml.Linq;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Linking;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Reports.Ladder;
using RehabTrack.Reports.Pictures;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Ladder;

public sealed class LadderDrawingTests
{
    private const string Space = "\u00a0";

    [Fact]
    public void The_dark_part_of_a_bar_is_the_lesions_share_of_the_ligament()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        XElement svg = IsWellFormed(LadderDrawing.Draw(course, analysis, new LadderOptions()));
        foreach (TrackStep step in Steps(analysis))
        {
            XElement rung = RungOf(svg, step);
            double ligament = Number(WithClass(rung, "ligament").Single(), "width");
            double lesion = WithClass(rung, "lesion").Select(part => Number(part, "width")).DefaultIfEmpty(0).Single();
            Assert.Equal(step.Place.LesionPercent!.Value.Value / 100, lesion / ligament, 0.001);
        }
    }

    [Fact]
    public void All_examinations_and_paths_share_one_scale_of_areas_and_the_legend_shows_it()
    {
        (CaseCourse course, CaseAnalysis analysis) = Branches().Build();
        XElement svg = IsWellFormed(LadderDrawing.Draw(course, analysis, new LadderOptions()));
        double perCm2 = Number(WithClass(svg, "scale").Single(), "width");
        TrackStep[] measured = [.. Steps(analysis).Where(step => step.Place.LigamentArea is not null)];
        Assert.True(measured.Select(step => step.Place.Key.Path).Distinct().Count() == 2);
        Assert.All(
            measured,
            step =>
                Assert.Equal(
                    step.Place.LigamentArea!.Value.Value * perCm2,
                    Number(WithClass(RungOf(svg, step), "ligament").Single(), "width"),
                    0.02
                )
        );
    }

    [Fact]
    public void Further_down_the_limb_is_further_down_the_picture()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        XElement svg = LadderDrawing.Draw(course, analysis, new LadderOptions()).Root;
        (double Level, double Y)[] places =
        [
            .. Steps(analysis)
                .Select(step => (step.Place.Level.Position.Value, Number(WithClass(RungOf(svg, step), "ligament").Single(), "y")))
                .OrderBy(place => place.Value),
        ];
        double perCm = (places[^1].Y - places[0].Y) / (places[^1].Level - places[0].Level);
        Assert.All(places, place => Assert.Equal(places[0].Y + (perCm * (place.Level - places[0].Level)), place.Y, 0.05));
        Assert.True(perCm > 0);
    }

    [Fact]
    public void Straightened_places_stand_where_the_first_tape_would_have_them()
    {
        InventedCase invented = new InventedCase(new DateOnly(2026, 1, 5), new DateOnly(2026, 3, 5)).Shifted(1, 0.8);
        invented.Track("axial-1", Part.Body, 20).Step(0, 20, Areas(1.2, 0)).Step(1, 20.8, Areas(1.2, 0));
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        Assert.Equal(["0", "0"], Offsets(new LadderOptions { Straightened = true }));
        Assert.NotEqual(["0", "0"], Offsets(new LadderOptions()));

        string[] Offsets(LadderOptions options)
        {
            XElement svg = LadderDrawing.Draw(course, analysis, options).Root;
            double[] y = [.. WithClass(svg, "rung").Select(rung => Number(WithClass(rung, "ligament").Single(), "y"))];
            return [.. y.Select(each => Svg.Written(each - y[0]))];
        }
    }

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void Every_reading_of_the_dates_shown_appears_exactly_once(WidthClass width)
    {
        (CaseCourse course, CaseAnalysis analysis) = Branches().Build();
        LadderPicture picture = LadderDrawing.Draw(course, analysis, new LadderOptions { Width = width });
        string[] drawn =
        [
            .. WithClass(picture.Root, "rung")
                .SelectMany(rung => rung.Attribute("data-readings")!.Value.Split(' '))
                .Order(StringComparer.Ordinal),
        ];
        string[] wanted =
        [
            .. course
                .Examinations.Skip(picture.FirstShown)
                .Take(picture.Shown)
                .SelectMany(examination => examination.Readings)
                .Select(reading => reading.Id)
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(wanted, drawn);
    }

    [Fact]
    public void An_unsure_link_is_dashed_and_carries_a_question_mark_and_a_sure_one_neither()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        XElement svg = LadderDrawing.Draw(course, analysis, new LadderOptions()).Root;
        int unsure = Steps(analysis).Count(step => step.Uncertain);
        Assert.Equal(1, unsure);
        Assert.All(WithClass(svg, "link-unsure"), link => Assert.NotNull(link.Attribute("stroke-dasharray")));
        Assert.All(WithClass(svg, "link-sure"), link => Assert.Null(link.Attribute("stroke-dasharray")));
        XElement scenery = WithClass(svg, "scenery").Single();
        Assert.Equal(unsure, WithClass(scenery, "link-unsure").Count());
        Assert.Equal(unsure, WithClass(scenery, "unsure").Count());
    }

    [Fact]
    public void A_surer_link_is_heavier()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5), new DateOnly(2026, 3, 5), new DateOnly(2026, 5, 5));
        invented
            .Track("axial-1", Part.Body, 20)
            .Step(0, 20, Areas(1.2, 0))
            .Step(1, 20, Areas(1.2, 0), 0.91)
            .Step(2, 20, Areas(1.2, 0), 0.99);
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        double[] weights =
        [
            .. WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions()).Root, "link")
                .Select(link => Number(link, "stroke-width")),
        ];
        Assert.Equal(2, weights.Length);
        Assert.True(weights[0] < weights[1]);
    }

    [Fact]
    public void A_level_that_was_not_read_is_a_dashed_box_with_the_words_and_a_missed_lesion_asks_for_a_person()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        LadderPicture picture = LadderDrawing.Draw(course, analysis, new LadderOptions());
        XElement missing = WithClass(picture.Root, "missing").Single();
        Assert.Equal("axial-3", missing.Attribute("data-track")!.Value);
        Assert.Equal(InventedCase.IdOf(2), missing.Attribute("data-examination")!.Value);
        Assert.Contains("not read", missing.Value, StringComparison.Ordinal);
        XElement box = WithClass(missing, "not-read").Single();
        Assert.NotNull(box.Attribute("stroke-dasharray"));
        Assert.Equal("var(--amber)", box.Attribute("stroke")!.Value);
        Assert.Equal(1, picture.Table.Rows.Count(row => row.Contains("not read", StringComparer.Ordinal)));
    }

    [Fact]
    public void A_place_seen_for_the_first_time_was_not_missing_before()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5), new DateOnly(2026, 3, 5), new DateOnly(2026, 5, 5));
        invented.Track("axial-1", Part.Body, 20);
        for (int i = 0; i < 3; i++)
        {
            invented.Step(i, 20, Areas(1.2, 0));
        }

        invented.Track("axial-2", Part.Body, 23).Step(1, 23, Areas(1.2, 0.2));
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement missing = WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions()).Root, "missing").Single();
        Assert.Equal(InventedCase.IdOf(2), missing.Attribute("data-examination")!.Value);
    }

    [Fact]
    public void A_rung_says_all_its_numbers_in_words()
    {
        InventedCase invented = new(new DateOnly(2026, 9, 8));
        invented
            .Track("axial-1", Part.Body, 24)
            .Step(
                0,
                24.3,
                reading =>
                    Areas(1.8, 0.45)(reading) with
                    {
                        Thickness = new Centimetres(0.82),
                        Width = new Centimetres(1.4),
                        Echogenicity = new Grade(GradeScales.Echogenicity0To3, 2),
                        FibreAlignment = new Grade(GradeScales.FibreAlignment0To3, 1),
                        Measurer = "Una Field",
                    }
            );
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        string words = WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions()).Root, "rung")
            .Single()
            .Attribute("aria-label")!
            .Value.Replace(Space, " ", StringComparison.Ordinal);
        Assert.Equal(
            "24.3 cm, body, 8 Sep 2026, ligament area 1.80 cm², lesion area 0.45 cm², lesion is 25 % of the ligament, thickness 0.82 cm, "
                + "width 1.40 cm, echogenicity 2 (scale 0 to 3), fibre alignment 1 (scale 0 to 3), measured by Una Field, "
                + "first reading of this place",
            words
        );
    }

    [Fact]
    public void A_place_without_areas_never_gets_a_bar()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5));
        invented.Track("axial-1", Part.Body, 18).Step(0, 18, reading => reading with { LesionPercent = new Percent(30) });
        invented.Track("axial-2", Part.Body, 20).Step(0, 20, reading => reading with { Thickness = new Centimetres(0.9) });
        invented
            .Track("axial-3", Part.Body, 22)
            .Step(0, 22, reading => reading with { Echogenicity = new Grade(GradeScales.Echogenicity0To3, 2) });
        invented.Track("axial-4", Part.Body, 24).Step(0, 24, reading => reading);
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement[] rungs = [.. WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions()).Root, "rung")];
        Assert.Equal(4, rungs.Length);
        Assert.All(rungs, rung => Assert.Empty(WithClass(rung, "ligament")));
        Assert.All(rungs, rung => Assert.Empty(WithClass(rung, "lesion")));
        Assert.Single(WithClass(rungs[0], "disc-share"));
        Assert.Single(WithClass(rungs[1], "calliper"));
        Assert.Contains("0.90", rungs[1].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_diffuse_lesion_is_hatched_and_has_no_share_to_scale()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5));
        invented
            .Track("axial-1", Part.Body, 18)
            .Step(0, 18, reading => reading with { LigamentArea = new SquareCentimetres(1.2), LesionArea = LesionArea.Diffuse });
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement rung = WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions { IdPrefix = "p" }).Root, "rung").Single();
        Assert.Equal("url(#p-hatch)", WithClass(rung, "ligament").Single().Attribute("fill")!.Value);
        Assert.Empty(WithClass(rung, "lesion"));
    }

    [Fact]
    public void A_lesion_that_was_not_measured_is_not_drawn_as_none()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5));
        invented.Track("axial-1", Part.Body, 18).Step(0, 18, reading => reading with { LigamentArea = new SquareCentimetres(1.2) });
        invented.Track("axial-2", Part.Body, 21).Step(0, 21, Areas(1.2, 0));
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement[] bars = [.. WithClass(LadderDrawing.Draw(course, analysis, new LadderOptions()).Root, "rung")];
        Assert.NotNull(WithClass(bars[0], "ligament").Single().Attribute("stroke-dasharray"));
        Assert.Contains("?", bars[0].Value, StringComparison.Ordinal);
        Assert.Null(WithClass(bars[1], "ligament").Single().Attribute("stroke-dasharray"));
    }

    [Fact]
    public void A_name_typed_by_hand_is_text_and_never_markup()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5));
        invented
            .Track("axial-1", Part.Body, 18)
            .Step(0, 18, reading => Areas(1.2, 0.1)(reading) with { Measurer = "<script>alert('x')</script>\u0001" });
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        LadderPicture picture = LadderDrawing.Draw(course, analysis, new LadderOptions());
        IsWellFormed(picture);
        Assert.DoesNotContain("<script", picture.Svg, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", picture.Svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, WidthClass.Desktop)]
    [InlineData(5, WidthClass.Desktop)]
    [InlineData(12, WidthClass.Desktop)]
    [InlineData(1, WidthClass.Phone)]
    [InlineData(12, WidthClass.Phone)]
    public void A_picture_stays_inside_its_frame_and_takes_every_colour_from_the_page(int examinations, WidthClass width)
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing(examinations).Build();
        foreach (bool straightened in new[] { false, true })
        {
            LadderPicture picture = LadderDrawing.Draw(
                course,
                analysis,
                new LadderOptions
                {
                    Width = width,
                    Straightened = straightened,
                    SelectedTrack = "axial-3",
                    SelectedExaminations = [InventedCase.IdOf(0), InventedCase.IdOf(examinations - 1)],
                }
            );
            IsWellFormed(picture);
            StaysInside(picture);
            TakesEveryColourFromThePage(picture);
        }
    }

    [Fact]
    public void A_phone_shows_the_last_three_dates_and_the_window_moves_without_changing_a_length()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing(8).Build();
        LadderPicture latest = LadderDrawing.Draw(course, analysis, new LadderOptions { Width = WidthClass.Phone });
        LadderPicture earlier = LadderDrawing.Draw(course, analysis, new LadderOptions { Width = WidthClass.Phone, FirstShown = 4 });
        Assert.Equal(3, WithClass(latest.Root, "date").Count());
        Assert.Equal((5, 3, 8), (latest.FirstShown, latest.Shown, latest.Examinations));
        Assert.True(latest.HasEarlier);
        Assert.False(latest.HasLater);
        Assert.True(earlier.HasLater);
        TrackStep both = Steps(analysis).First(step => step.ExaminationId == InventedCase.IdOf(5));
        Assert.Equal(Width(latest), Width(earlier));

        double Width(LadderPicture picture) => Number(WithClass(RungOf(picture.Root, both), "ligament").Single(), "width");
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 3)]
    [InlineData(6, 5)]
    public void The_window_opens_where_the_chosen_examination_can_be_seen(int chosen, int first)
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing(8).Build();
        LadderOptions options = new()
        {
            Width = WidthClass.Phone,
            SelectedExaminations = [InventedCase.IdOf(chosen), InventedCase.IdOf(7)],
        };
        Assert.Equal(first, LadderDrawing.Draw(course, analysis, options).FirstShown);
        Assert.Equal(2, LadderDrawing.Draw(course, analysis, options with { FirstShown = 2 }).FirstShown);
    }

    [Fact]
    public void A_window_outside_the_course_is_moved_back_into_it()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing(4).Build();
        LadderPicture picture = LadderDrawing.Draw(course, analysis, new LadderOptions { Width = WidthClass.Phone, FirstShown = 99 });
        Assert.Equal(1, picture.FirstShown);
    }

    [Theory]
    [InlineData(Landmark.PointOfHock, 3)]
    [InlineData(Landmark.AccessoryCarpalBone, 3)]
    [InlineData(Landmark.AccessoryCarpalBone, 7)]
    [InlineData(Landmark.PointOfHock, 10)]
    public void The_words_of_the_axis_never_run_into_the_first_heading_and_the_landmark_is_always_named(Landmark landmark, int examinations)
    {
        InventedCase invented = InventedCase.Healing(examinations);
        invented.Landmark = landmark;
        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement svg = LadderDrawing.Draw(course, analysis, new LadderOptions()).Root;
        double widest = WithClass(svg, "axis-words").Max(words => 4 + Svg.WidthOf(words.Value, Number(words, "font-size")));
        XElement date = WithClass(svg, "date").First();
        XElement below = date.ElementsAfterSelf().First();
        Assert.True(widest < Number(below, "x") - (Svg.WidthOf(below.Value, Number(below, "font-size")) / 2));
        Assert.Contains(
            Wording.Names.Of(landmark),
            string.Concat(svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Crowded_rungs_do_not_cover_each_other()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5), new DateOnly(2026, 3, 5));
        double[] levels = [18, 18.5, 19, 19.3, 20, 20.4, 21];
        for (int i = 0; i < levels.Length; i++)
        {
            invented.Track($"axial-{i + 1}", Part.Body, levels[i]).Step(0, levels[i], Areas(1.2, 0.3)).Step(1, levels[i], Areas(1.2, 0.3));
        }

        (CaseCourse course, CaseAnalysis analysis) = invented.Build();
        XElement svg = LadderDrawing.Draw(course, analysis, new LadderOptions()).Root;
        (double Top, double Bottom)[] bars =
        [
            .. WithClass(svg, "rung")
                .Where(rung => rung.Attribute("data-examination")!.Value == InventedCase.IdOf(0))
                .Select(rung => WithClass(rung, "ligament").Single())
                .Select(bar => (Number(bar, "y"), Number(bar, "y") + Number(bar, "height"))),
        ];
        Assert.All(bars.Zip(bars.Skip(1)), pair => Assert.True(pair.First.Bottom < pair.Second.Top));
    }

    [Fact]
    public void A_picture_for_paper_has_nothing_to_press_and_is_an_image()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        XElement paper = LadderDrawing.Draw(course, analysis, new LadderOptions { Interactive = false }).Root;
        Assert.Equal("img", paper.Attribute("role")!.Value);
        Assert.DoesNotContain(paper.Descendants(), element => element.Attribute("tabindex") is not null);
        XElement screen = LadderDrawing.Draw(course, analysis, new LadderOptions()).Root;
        Assert.All(
            WithClass(screen, "rung"),
            rung => Assert.Equal(("button", "0"), (rung.Attribute("role")!.Value, rung.Attribute("tabindex")!.Value))
        );
    }

    [Fact]
    public void The_chosen_place_is_marked_and_says_so()
    {
        (CaseCourse course, CaseAnalysis analysis) = InventedCase.Healing().Build();
        XElement svg = LadderDrawing
            .Draw(course, analysis, new LadderOptions { SelectedTrack = "axial-3", SelectedExaminations = [InventedCase.IdOf(1)] })
            .Root;
        XElement chosen = WithClass(svg, "chosen").Single();
        Assert.Equal("true", chosen.Attribute("aria-pressed")!.Value);
        Assert.Equal(
            ("axial-3", InventedCase.IdOf(1)),
            (chosen.Attribute("data-track")!.Value, chosen.Attribute("data-examination")!.Value)
        );
        Assert.Single(WithClass(svg, "chosen-examination"));
    }

    [Fact]
    public void A_case_without_examinations_is_an_empty_picture_with_words()
    {
        (CaseCourse course, CaseAnalysis analysis) = new InventedCase().Build();
        LadderPicture picture = LadderDrawing.Draw(course, analysis, new LadderOptions());
        IsWellFormed(picture);
        Assert.Equal("No examination yet", picture.Title);
        Assert.Empty(picture.Table.Rows);
    }

    [Fact]
    public void The_table_has_a_row_for_every_place_and_a_cell_for_every_column()
    {
        (CaseCourse course, CaseAnalysis analysis) = Branches().Build();
        DrawingTable table = LadderDrawing.Draw(course, analysis, new LadderOptions { Width = WidthClass.Phone }).Table;
        Assert.Equal(Steps(analysis).Count(), table.Rows.Count(row => !row.Contains("not read", StringComparer.Ordinal)));
        Assert.All(table.Rows, row => Assert.Equal(table.Columns.Count, row.Count));
    }

    private static InventedCase Branches()
    {
        InventedCase invented = new(new DateOnly(2026, 1, 5), new DateOnly(2026, 3, 5), new DateOnly(2026, 5, 5), new DateOnly(2026, 7, 5));
        invented.Track("axial-1", Part.Body, 14);
        for (int i = 0; i < 4; i++)
        {
            invented.Step(i, 14 + (0.1 * i), Areas(1.3, 0));
        }

        invented.Track("medial-branch-1", Part.MedialBranch, 19.5);
        for (int i = 0; i < 4; i++)
        {
            invented.Step(i, 19.5, Areas(0.7 + (0.05 * i), 0.1 * i));
        }

        invented.Track("medial-branch-2", Part.MedialBranch, 21.5);
        invented.Step(0, 21.5, Areas(0.8, 0.1)).Step(3, 21.4, Areas(0.8, 0.2), 1, LinkBasis.Pinned);
        return invented;
    }

    private static Func<Reading, Reading> Areas(double ligament, double lesion) =>
        reading =>
            reading with
            {
                LigamentArea = new SquareCentimetres(ligament),
                LesionArea = LesionArea.Measured(new SquareCentimetres(lesion)),
            };

    private static IEnumerable<TrackStep> Steps(CaseAnalysis analysis) => analysis.Links.Tracks.SelectMany(track => track.Steps);

    private static XElement RungOf(XElement svg, TrackStep step) =>
        WithClass(svg, "rung")
            .Single(rung =>
                rung.Attribute("data-examination")!.Value == step.ExaminationId
                && rung.Attribute("data-readings")!.Value.Split(' ')[0] == step.Place.Readings[0].Id
            );
}
