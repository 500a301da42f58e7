using AngleSharp.Dom;
using Bunit;
using RehabTrack.Rechecks.Findings;
using RehabTrack.Web.Features.Start;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Start;

public sealed class FilledOverviewTests(DemoPracticeAtHand practice) : IClassFixture<DemoPracticeAtHand>
{
    [Fact]
    public async Task The_setback_stands_before_the_case_without_progress()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<Overview> page = tab.Render<Overview>();
        string[] names = [.. page.FindAll("section[aria-labelledby=look] .name").Select(name => name.TextContent)];
        int setback = Array.FindIndex(names, name => name.StartsWith("Pepperwick", StringComparison.Ordinal));
        int stalled = Array.FindIndex(names, name => name.StartsWith("Tansy Fathom", StringComparison.Ordinal));
        Assert.Equal(0, setback);
        Assert.True(stalled > setback, string.Join(", ", names));
    }

    [Fact]
    public async Task Every_case_that_needs_a_look_says_why_in_a_sentence_and_leads_to_the_case()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<Overview> page = tab.Render<Overview>();
        Assert.All(
            page.FindAll("section[aria-labelledby=look] li"),
            row =>
            {
                Assert.Matches("^/cases/[0-9a-f-]{36}$", row.QuerySelector("a")!.GetAttribute("href")!);
                Assert.NotEmpty(row.QuerySelector(".mark")!.TextContent);
                Assert.EndsWith(".", row.QuerySelector(".said")!.TextContent.Trim(), StringComparison.Ordinal);
            }
        );
    }

    [Fact]
    public async Task A_horse_stands_once_and_tells_of_its_exercise_beside_its_case()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<Overview> page = tab.Render<Overview>();
        IElement tansy = Assert.Single(
            page.FindAll("section[aria-labelledby=look] > ul > li"),
            row => row.QuerySelector(".name")!.TextContent.StartsWith("Tansy Fathom", StringComparison.Ordinal)
        );
        string[] marks = [.. tansy.QuerySelectorAll(".mark").Select(mark => mark.TextContent)];

        Assert.Contains(Names.Of(FindingKind.NoProgress), marks);
        Assert.Equal(marks.Length, tansy.QuerySelectorAll(".stand").Length);
        Assert.All(tansy.QuerySelectorAll(".stand a"), link => Assert.NotEmpty(link.TextContent));
    }

    [Fact]
    public async Task The_overdue_recheck_says_since_when()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<Overview> page = tab.Render<Overview>();
        IElement overdue = Assert.Single(
            page.FindAll("section[aria-labelledby=look] > ul > li"),
            row => row.QuerySelector(".name")!.TextContent.StartsWith("Brimble Hob", StringComparison.Ordinal)
        );
        Assert.Contains("Recheck overdue", overdue.QuerySelectorAll(".mark.amber").Select(mark => mark.TextContent));
        // The last signed examination, 26 August 2026, and the usual 60 days.
        Assert.Contains(Figures.Date(new DateOnly(2026, 10, 25)), overdue.TextContent, StringComparison.Ordinal);
        Assert.Contains(Figures.Days(31), overdue.TextContent, StringComparison.Ordinal);
        Assert.Contains(overdue.QuerySelectorAll("a"), link => link.GetAttribute("href")!.EndsWith("&do=book", StringComparison.Ordinal));
    }
}
