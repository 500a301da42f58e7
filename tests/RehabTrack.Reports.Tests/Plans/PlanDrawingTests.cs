using System.Xml.Linq;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Reports.Pictures;
using RehabTrack.Reports.Plans;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Plans;

public sealed class PlanDrawingTests
{
    public static TheoryData<string, WidthClass> Templates
    {
        get
        {
            TheoryData<string, WidthClass> all = [];
            foreach (PlanTemplate template in PlanTemplates.All)
            {
                all.Add(template.Name, WidthClass.Desktop);
                all.Add(template.Name, WidthClass.Phone);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Templates))]
    public void Every_template_is_drawn_inside_its_frame_in_the_colours_of_the_page(string template, WidthClass width)
    {
        Picture picture = Draw(PlanTemplates.Find(template)!.ToPlan("1", 1), width: width);
        IsWellFormed(picture);
        TakesEveryColourFromThePage(picture);
        StaysInside(picture);
        Assert.DoesNotContain("NaN", picture.Svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_is_as_high_as_its_minutes_and_stands_on_the_slower_gait()
    {
        Picture picture = Draw(
            Plan(Step("mixed", new GaitRule(20), new GaitRule(10), days: 7), Step("walk", new GaitRule(30), new GaitRule(0)))
        );
        XElement[] weeks = [.. Classed(picture, "week")];
        XElement[] first = [.. weeks.Where(week => Number(week, "x") == Number(weeks[0], "x"))];

        Assert.Equal(["walk", "trot"], first.Select(bar => bar.Attribute("data-gait")!.Value));
        Assert.Equal(Number(first[0], "height"), 2 * Number(first[1], "height"), 0.05);
        Assert.Equal(Number(first[0], "y"), Number(first[1], "y") + Number(first[1], "height"), 0.05);
        Assert.Equal(1.5 * Number(first[0], "height"), Number(weeks[2], "height"), 0.05);
    }

    [Fact]
    public void Two_outings_a_day_are_the_minutes_of_the_day()
    {
        PlanStep step = Step("walk", new GaitRule(20), new GaitRule(0)) with { OutingsADay = 2 };
        Assert.Equal("40", Assert.Single(Draw(Plan(step)).Table.Rows)[2]);
    }

    [Fact]
    public void What_waits_behind_a_recheck_is_drawn_in_outline_and_told_in_the_table()
    {
        PlanStep walk = Step("walk", new GaitRule(20), new GaitRule(0)) with { Gate = new Gate("sound", []) };
        Picture picture = Draw(Plan(walk, Step("trot", new GaitRule(20), new GaitRule(5))));

        Assert.Single(Classed(picture, "gate"));
        XElement[] waiting = [.. Classed(picture, "week waits")];
        Assert.Equal(8, waiting.Length);
        Assert.All(waiting, bar => Assert.NotNull(bar.Attribute("stroke-dasharray")));
        Assert.All(Classed(picture, "week"), bar => Assert.Null(bar.Attribute("stroke-dasharray")));
        Assert.Equal(["", "one recheck"], picture.Table.Rows.Select(row => row[^1]));
    }

    [Fact]
    public void A_row_that_is_not_filled_is_a_frame_and_says_that_it_permits_nothing()
    {
        PlanStep walk = Step("walk", null, new GaitRule(0));
        Picture picture = Draw(Plan(walk));

        Assert.Empty(Classed(picture, "week"));
        Assert.Single(Classed(picture, "unfilled"));
        Assert.Equal("not filled: permits nothing", Assert.Single(picture.Table.Rows)[^1]);
    }

    [Fact]
    public void Growth_takes_a_row_of_the_table_each_week()
    {
        Picture picture = Draw(Plan(Step("walk", new GaitRule(10, 5, 20), new GaitRule(0))));

        Assert.Equal([("1", "10"), ("2", "15"), ("3–4", "20")], picture.Table.Rows.Select(row => (row[0], row[2])));
    }

    [Fact]
    public void Today_stands_where_the_horse_stands()
    {
        PlanVersion plan = Plan(Step("walk", new GaitRule(20), new GaitRule(0)), Step("more", new GaitRule(30), new GaitRule(0)));
        double At(PlanPlace place) => Number(Assert.Single(Classed(Draw(plan, place), "today")), "x1");

        Assert.Equal(28, (At(new PlanPlace(1, 3)) - At(new PlanPlace(0, 3))) / ((At(new PlanPlace(0, 4)) - At(new PlanPlace(0, 3)))), 0.5);
        Assert.Empty(Classed(Draw(plan), "today"));
    }

    private static PlanStep Step(string name, GaitRule? walk, GaitRule? trot, int days = 28) =>
        new()
        {
            Name = name,
            Walk = walk,
            Trot = trot,
            Canter = new GaitRule(0),
            Gallop = new GaitRule(0),
            OutingsADay = 1,
            DaysAWeek = 7,
            Modes = WorkModes.InHand,
            Surfaces = Surfaces.FirmEven,
            ShortestDays = days,
        };

    private static PlanVersion Plan(params PlanStep[] steps) =>
        new()
        {
            Id = "1",
            Number = 1,
            Steps = steps,
        };

    private static Picture Draw(PlanVersion plan, PlanPlace? today = null, WidthClass width = WidthClass.Desktop) =>
        PlanDrawing.Draw(plan, new PlanOptions { Width = width, Today = today });

    private static IEnumerable<XElement> Classed(Picture picture, string name) =>
        picture.Root.Descendants().Where(element => element.Attribute("class")?.Value == name);
}
