using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Horses;

public sealed class HorseListTests(DemoPracticeAtHand practice) : IClassFixture<DemoPracticeAtHand>
{
    [Fact]
    public async Task All_horses_stand_by_name_with_the_verdict_of_their_open_cases()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<HorseList> page = tab.Render<HorseList>();
        string[] names = NamesOf(page);
        Assert.Equal(names.Order(StringComparer.OrdinalIgnoreCase), names);
        Assert.Contains("Old Saltmarsh", names);
        Assert.Equal(
            2,
            page.FindAll("tbody tr")
                .Single(row => row.TextContent.Contains("Old Saltmarsh", StringComparison.Ordinal))
                .QuerySelectorAll(".case-line .mark")
                .Length
        );
    }

    [Fact]
    public async Task What_is_typed_stands_in_the_address_and_finds_by_owner_too()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<HorseList> page = tab.Render<HorseList>();
        int all = NamesOf(page).Length;
        await page.Find("#q").InputAsync(new ChangeEventArgs { Value = "sallow" });
        Assert.EndsWith("/horses?q=sallow", tab.Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        page.WaitForAssertion(() => Assert.InRange(NamesOf(page).Length, 1, all - 1), TimeSpan.FromSeconds(90));
        Assert.All(page.FindAll("tbody tr"), row => Assert.Contains("Sallow", row.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_address_with_a_search_opens_on_what_it_finds()
    {
        await using BunitContext tab = practice.Tab();
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo("/horses?q=pepper");
        IRenderedComponent<HorseList> page = tab.Render<HorseList>();
        Assert.Equal(["Pepperwick"], NamesOf(page));
        Assert.Equal("pepper", page.Find("#q").GetAttribute("value"));
    }

    [Fact]
    public async Task A_search_that_finds_nothing_says_what_was_looked_for()
    {
        await using BunitContext tab = practice.Tab();
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo("/horses?q=zzz");
        IRenderedComponent<HorseList> page = tab.Render<HorseList>();
        Assert.Contains("zzz", page.Find(".nothing").TextContent, StringComparison.Ordinal);
    }

    private static string[] NamesOf(IRenderedComponent<HorseList> page) =>
        [.. page.FindAll("tbody a.name").Select(name => name.TextContent)];
}
