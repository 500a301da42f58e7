using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>Trainer and owner see the horses that are theirs, nothing else, and never a verdict.</summary>
[Collection(BrowserCollection.Name)]
public sealed partial class OutsidersTests(ChromiumFixture chromium, DemoFixture demo)
{
    private static readonly string[] StaffPages = ["/", "/horses", "/import", "/people", "/practice"];

    private static readonly string[] Verdicts = ["Healing", "No progress", "Worsening", "At target", "Not yet readable"];

    [Theory]
    [InlineData("Oona Treske", "/yard", new[] { "Linnet Minor", "Old Saltmarsh", "Quillon", "Wrenfold Duchess" })]
    [InlineData("Wilf Arkendale", "/yard", new[] { "Brimble Hob", "Ironbell", "Pepperwick", "Tansy Fathom" })]
    [InlineData("Marguerite Sallow", "/progress", new[] { "Old Saltmarsh", "Quillon", "Wrenfold Duchess" })]
    public async Task A_person_from_outside_sees_their_horses_and_no_verdict(string person, string home, string[] horses)
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);

        await visit.SignInByNameAsync(person);

        Assert.Equal(home, new Uri(visit.Page.Url).AbsolutePath);
        Assert.Equal(horses, (await visit.Page.Locator("h2").AllInnerTextsAsync()).Order(StringComparer.Ordinal));
        string seen = await visit.Page.Locator("body").InnerTextAsync();
        Assert.DoesNotContain(Verdicts, verdict => seen.Contains(verdict, StringComparison.OrdinalIgnoreCase));
        Assert.Empty(visit.Complaints);
    }

    [Theory]
    [InlineData("Oona Treske")]
    [InlineData("Wilf Arkendale")]
    [InlineData("Marguerite Sallow")]
    public async Task A_print_has_one_sheet_a_horse_with_its_date_its_plan_and_how_long_it_holds(string person)
    {
        await using Visit visit = await chromium.VisitAsync(demo.App, Screen.Phone);
        await visit.SignInByNameAsync(person);
        int horses = await visit.Page.Locator("h2").CountAsync();

        byte[] print = await visit.Page.PdfAsync(new PagePdfOptions { Format = "A4" });

        Assert.Equal(horses, PageOfPrint().Count(Encoding.Latin1.GetString(print)));
        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        foreach (ILocator sheet in await visit.Page.Locator("article.permit").AllAsync())
        {
            Assert.Matches(
                "A print is void after .+, on any sign|No work is signed",
                await sheet.Locator(".permit-holds").InnerTextAsync()
            );
            await Assertions.Expect(sheet.Locator(".only-print").Last).ToContainTextAsync("Farrowmere Horse Practice");
            await Assertions.Expect(sheet.Locator(".permit-do")).ToBeHiddenAsync();
        }
    }

    [Theory]
    [InlineData("Oona Treske")]
    [InlineData("Marguerite Sallow")]
    public async Task The_pages_of_the_practice_are_refused_to_a_person_from_outside(string person)
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);
        await visit.SignInByNameAsync(person);

        foreach (string path in StaffPages.Append(await CaseAddressAsync()))
        {
            IResponse? answer = await visit.Page.GotoAsync(path);

            Assert.Equal((path, 403), (path, answer!.Status));
            Assert.DoesNotContain("Pepperwick", await visit.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Nobody_sees_anything_before_signing_in()
    {
        await using Visit visit = await chromium.VisitAsync(demo.App);

        foreach (string path in StaffPages.Concat(["/yard", "/progress", await CaseAddressAsync()]))
        {
            await visit.Page.GotoAsync(path);

            Assert.Equal((path, "/sign-in"), (path, new Uri(visit.Page.Url).AbsolutePath));
        }
    }

    private async Task<string> CaseAddressAsync()
    {
        await using Visit vet = await chromium.VisitAsAsync(demo.App, "Vet");
        await EveryPage.DemoPages.OpenCaseAsync(vet, "Pepperwick");
        return new Uri(vet.Page.Url).AbsolutePath;
    }

    [GeneratedRegex(@"/Type\s*/Page\b", RegexOptions.None, 10_000)]
    private static partial Regex PageOfPrint();
}
