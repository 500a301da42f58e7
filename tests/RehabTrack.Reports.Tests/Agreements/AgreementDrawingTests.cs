using System.Xml.Linq;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Rechecks.Repeats;
using RehabTrack.Reports.Agreements;
using RehabTrack.Reports.Pictures;
using static RehabTrack.Reports.Tests.AssertPicture;

namespace RehabTrack.Reports.Tests.Agreements;

public sealed class AgreementDrawingTests
{
    private static readonly Agreement TwoPersons = Of(
        null,
        null,
        (1.0, 0.10, "Ada"),
        (1.2, -0.06, "Ben"),
        (1.6, 0.02, "Ada"),
        (2.0, 0.14, "Ben")
    );

    [Theory]
    [InlineData(WidthClass.Desktop)]
    [InlineData(WidthClass.Phone)]
    public void The_drawing_stays_inside_and_takes_its_colours_from_the_page(WidthClass width)
    {
        Picture picture = Draw(TwoPersons, width);
        IsWellFormed(picture);
        TakesEveryColourFromThePage(picture);
        StaysInside(picture);
    }

    [Fact]
    public void Bias_and_limits_lie_at_their_values_on_the_scale_of_the_points()
    {
        Picture picture = Draw(Of("Ada", "Ben", (1.0, 0.10, null), (1.2, -0.06, null), (1.6, 0.02, null), (2.0, 0.14, null)));
        Agreement agreement = Of("Ada", "Ben", (1.0, 0.10, null), (1.2, -0.06, null), (1.6, 0.02, null), (2.0, 0.14, null));
        double[] points = [.. Classed(picture, "point").Select(point => Number(point, "cy"))];
        double perUnit = (points[1] - points[3]) / (0.14 + 0.06);
        double zero = points[0] + (0.10 * perUnit);

        double bias = Number(Assert.Single(Classed(picture, "bias")), "y1");
        double[] limits = [.. Classed(picture, "limit").Select(line => Number(line, "y1"))];

        Assert.Equal(zero - (agreement.Bias * perUnit), bias, 0.1);
        Assert.Equal(zero - (agreement.Limits.Lower * perUnit), limits[0], 0.1);
        Assert.Equal(zero - (agreement.Limits.Upper * perUnit), limits[1], 0.1);
        Assert.Equal(2 * agreement.LimitHalfWidth * perUnit, Number(Classed(picture, "limit-interval").First(), "height"), 0.1);
    }

    [Fact]
    public void Two_persons_are_told_apart_by_the_shape_of_their_points()
    {
        Picture picture = Draw(TwoPersons);

        // Two of each in the plot, one of each in the legend.
        Assert.Equal(3, Classed(picture, "point").Count(point => point.Name.LocalName == "circle"));
        Assert.Equal(3, Classed(picture, "point").Count(point => point.Name.LocalName == "rect"));
        Assert.Equal(["Ada", "Ben", "Ada", "Ben"], picture.Table.Rows.Select(row => row[1]));
    }

    [Fact]
    public void Equal_values_make_no_broken_scale()
    {
        Picture picture = Draw(Of(null, null, (1.0, 0, "Ada"), (1.0, 0, "Ada")));
        StaysInside(picture);
        Assert.DoesNotContain("NaN", picture.Svg, StringComparison.Ordinal);
    }

    private static Picture Draw(Agreement agreement, WidthClass width = WidthClass.Desktop) =>
        AgreementDrawing.Draw(agreement, new AgreementOptions { Size = MeasuredSize.LigamentArea, Width = width });

    private static Agreement Of(string? first, string? second, params (double Mean, double Difference, string? Measurer)[] points) =>
        Agreement.Of(
            [.. points.Select((point, index) => new AgreementPoint($"s{index}", point.Mean, point.Difference, point.Measurer))],
            first,
            second
        )!;

    private static IEnumerable<XElement> Classed(Picture picture, string name) =>
        picture.Root.Descendants().Where(element => element.Attribute("class")?.Value == name);
}
