using System.Globalization;
using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Reports.Pictures;
using RehabTrack.Reports.Sizes;

namespace RehabTrack.Reports.Tests.Sizes;

public sealed class SizeDrawingTests
{
    private static readonly SizeBar[] Bars =
    [
        new(new DateOnly(2026, 3, 10), 1, false),
        new(new DateOnly(2026, 5, 9), 0.5, false),
        new(new DateOnly(2026, 7, 10), 0.52, true),
    ];

    private static XElement[] RectanglesOf(Picture picture) =>
        [.. picture.Root.Descendants().Where(element => element.Name.LocalName == "rect")];

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void Heights_stand_to_each_other_as_the_sizes_do_and_what_cannot_be_told_apart_is_told_by_its_edge_too()
    {
        XElement[] drawn = RectanglesOf(SizeDrawing.Draw(Bars, new SizeOptions()));

        Assert.Equal([1, 0.5, 0.52], drawn.Select(bar => Math.Round(Number(bar, "height") / Number(drawn[0], "height"), 3)));
        Assert.Single(drawn.Select(bar => Number(bar, "y") + Number(bar, "height")).Distinct());
        Assert.Equal(["told", "told", "same"], drawn.Select(bar => bar.Attribute("data-part")!.Value));
        Assert.Equal([null, null, "4 3"], drawn.Select(bar => bar.Attribute("stroke-dasharray")?.Value));
    }

    [Fact]
    public void The_table_says_what_the_bars_show()
    {
        Picture picture = SizeDrawing.Draw(Bars, new SizeOptions());

        Assert.Equal(["100", "50", "52"], picture.Table.Rows.Select(row => row[1]));
        Assert.Equal(["first shown", "smaller", "cannot tell: within what we can measure"], picture.Table.Rows.Select(row => row[2]));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(14)]
    public void All_stays_inside_and_an_injury_that_is_gone_keeps_a_line(int count)
    {
        SizeBar[] bars =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => new SizeBar(new DateOnly(2026, 1, 5).AddDays(60 * i), 1.0 - (i / (double)count), false)),
            new(new DateOnly(2028, 12, 24), 0, false),
        ];
        Picture picture = SizeDrawing.Draw(bars, new SizeOptions());

        Assert.Equal(count + 1, RectanglesOf(picture).Length);
        Assert.All(
            RectanglesOf(picture),
            bar =>
            {
                Assert.InRange(Number(bar, "x"), 0, picture.Width - Number(bar, "width"));
                Assert.InRange(Number(bar, "y"), 0, picture.Height);
                Assert.True(Number(bar, "height") >= 2);
            }
        );
    }
}
