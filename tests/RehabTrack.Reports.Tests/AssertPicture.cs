using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using RehabTrack.Reports.Pictures;

namespace RehabTrack.Reports.Tests;

/// <summary>What holds for every picture.</summary>
internal static partial class AssertPicture
{
    private static readonly HashSet<string> Paints = new(StringComparer.Ordinal) { "fill", "stroke", "color", "stop-color", "style" };

    public static XElement IsWellFormed(Picture picture)
    {
        XElement svg = XElement.Parse(picture.Svg);
        Assert.Equal("svg", svg.Name.LocalName);
        Assert.Equal(
            string.Create(CultureInfo.InvariantCulture, $"0 0 {picture.Width:0.##} {picture.Height:0.##}"),
            svg.Attribute("viewBox")?.Value
        );
        Assert.Equal(picture.Title, svg.Attribute("aria-label")?.Value);
        Assert.Equal(picture.Title, svg.Elements().Single(element => element.Name.LocalName == "title").Value);
        XElement description = svg.Elements().Single(element => element.Name.LocalName == "desc");
        Assert.Equal(picture.Description, description.Value);
        Assert.Equal(description.Attribute("id")?.Value, svg.Attribute("aria-describedby")?.Value);
        return svg;
    }

    public static void TakesEveryColourFromThePage(Picture picture)
    {
        foreach (XAttribute paint in picture.Root.DescendantsAndSelf().Attributes().Where(each => Paints.Contains(each.Name.LocalName)))
        {
            if (paint.Name.LocalName == "style")
            {
                Assert.DoesNotMatch(Literal(), paint.Value);
            }
            else
            {
                Assert.Matches(VariableOrNone(), paint.Value);
            }
        }
    }

    public static void StaysInside(Picture picture)
    {
        foreach (
            XElement element in picture.Root.Descendants().Where(element => element.Ancestors().All(up => up.Name.LocalName != "defs"))
        )
        {
            (double? left, double? right, double? top, double? bottom) = Extent(element);
            string what = element.ToString();
            Assert.True(left is null or >= -0.5, what);
            Assert.True(top is null or >= -0.5, what);
            Assert.True(right is null || right <= picture.Width + 0.5, what);
            Assert.True(bottom is null || bottom <= picture.Height + 0.5, what);
        }
    }

    public static double Number(XElement element, string attribute) =>
        double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    public static IEnumerable<XElement> WithClass(XElement root, string name) =>
        root.Descendants().Where(element => (element.Attribute("class")?.Value ?? "").Split(' ').Contains(name, StringComparer.Ordinal));

    private static (double? Left, double? Right, double? Top, double? Bottom) Extent(XElement element)
    {
        switch (element.Name.LocalName)
        {
            case "rect" when element.Attribute("x") is not null:
                double x = Number(element, "x");
                double y = Number(element, "y");
                return (x, x + Number(element, "width"), y, y + Number(element, "height"));
            case "circle":
                double radius = Number(element, "r");
                return (
                    Number(element, "cx") - radius,
                    Number(element, "cx") + radius,
                    Number(element, "cy") - radius,
                    Number(element, "cy") + radius
                );
            case "line":
                double[] across = [Number(element, "x1"), Number(element, "x2")];
                double[] down = [Number(element, "y1"), Number(element, "y2")];
                return (across.Min(), across.Max(), down.Min(), down.Max());
            case "text":
                double size = Number(element, "font-size");
                double width = Svg.WidthOf(element.Value, size);
                double start =
                    Number(element, "x")
                    - (
                        element.Attribute("text-anchor")?.Value switch
                        {
                            "middle" => width / 2,
                            "end" => width,
                            _ => 0,
                        }
                    );
                return (start, start + width, Number(element, "y") - size, Number(element, "y"));
            default:
                return (null, null, null, null);
        }
    }

    [GeneratedRegex(@"#[0-9a-fA-F]{3,8}\b|rgb|hsl", RegexOptions.NonBacktracking)]
    private static partial Regex Literal();

    [GeneratedRegex(@"^(?:none|var\(--[a-z]+\)|url\(#[\w-]+\))$", RegexOptions.NonBacktracking)]
    private static partial Regex VariableOrNone();
}
