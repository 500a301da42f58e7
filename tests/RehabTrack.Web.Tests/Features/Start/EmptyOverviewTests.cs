using Bunit;
using RehabTrack.Web.Features.Start;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Start;

public sealed class EmptyOverviewTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task On_the_first_morning_the_page_says_what_to_do_first()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<Overview> page = tab.Render<Overview>();
        Assert.Equal("Wednesday 25 November", page.Find("h1").TextContent);
        Assert.Equal(StartPage.EmptySay, page.Find(".empty .say").TextContent);
        Assert.Equal(
            ["/import", "/horses/new", "/import/example.csv", "/import/empty.csv"],
            page.FindAll(".empty a").Select(link => link.GetAttribute("href"))
        );
    }
}
