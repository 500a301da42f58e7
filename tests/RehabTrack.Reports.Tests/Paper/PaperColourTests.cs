using System.Globalization;
using System.Text.RegularExpressions;
using RehabTrack.Reports.Paper;

namespace RehabTrack.Reports.Tests.Paper;

public sealed partial class PaperColourTests
{
    /// <summary>The colours of the pages in light stand in one place, which is not read where paper is written; so it is read here.</summary>
    [Fact]
    public void Paper_has_the_colours_of_the_pages_in_light()
    {
        string sheet = File.ReadAllText(RepositoryFolder.Of("src", "RehabTrack.Web", "wwwroot", "app.css"));
        Dictionary<string, PaperColour> light = Light()
            .Matches(sheet)
            .GroupBy(found => found.Groups["name"].Value)
            .ToDictionary(found => found.Key, found => Colour(found.First().Groups["colour"].Value));

        Assert.Equal(
            (light["ink"], light["soft"], light["line"], light["accent"], light["amber"]),
            (PaperColour.Ink, PaperColour.Soft, PaperColour.Line, PaperColour.Accent, PaperColour.Amber)
        );
    }

    private static PaperColour Colour(string hex)
    {
        byte Part(int at) => byte.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new PaperColour(Part(0), Part(2), Part(4));
    }

    [GeneratedRegex("--(?<name>[a-z]+): light-dark\\(#(?<colour>[0-9a-f]{6}),", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Light();
}
