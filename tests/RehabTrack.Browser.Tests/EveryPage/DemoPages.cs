using Microsoft.Playwright;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>The way to the pages of a horse: by its name, as a person goes.</summary>
internal static class DemoPages
{
    /// <summary>The recheck board with the form that books the first horse.</summary>
    public static async Task OpenBoardAsync(Visit visit)
    {
        await visit.OpenAsync("/rechecks");
        await visit.Page.GetByRole(AriaRole.Link, new() { NameRegex = new("^(Book|Move) ") }).First.ClickAsync();
        await visit.Page.Locator("form #date").WaitForAsync();
    }

    /// <summary>The reminder of the first horse of the board.</summary>
    public static async Task OpenReminderAsync(Visit visit)
    {
        await visit.OpenAsync("/rechecks");
        await visit.Page.Locator("a[href$='/reminder']").First.ClickAsync();
        await visit.Page.Locator(".reminder-letter").WaitForAsync();
    }

    public static async Task OpenHorseAsync(Visit visit, string name)
    {
        await visit.OpenAsync("/horses");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = name }).First.ClickAsync();
        await visit.Page.WaitForURLAsync(address => address.Contains("/horses/", StringComparison.Ordinal));
        await visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1, Name = name }).WaitForAsync();
    }

    public static async Task OpenBelowHorseAsync(Visit visit, string name, string below)
    {
        await OpenHorseAsync(visit, name);
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + below);
    }

    /// <summary>What was put away; a person of nobody's is put away first where nothing was.</summary>
    public static async Task OpenPutAwayAsync(Visit visit)
    {
        await visit.OpenAsync("/put-away?of=people");
        if (await visit.Page.Locator(".archived li").CountAsync() > 0)
        {
            return;
        }

        await visit.OpenAsync("/people/new");
        await visit.Page.FillAsync("#name", "Quill Ferrow");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Quill Ferrow" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put this person away" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put away", Exact = true }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/people");
        await visit.OpenAsync("/put-away?of=people");
        await visit.Page.Locator(".archived li").WaitForAsync();
    }

    /// <summary>A form below the first horse of the trainer's page.</summary>
    public static async Task OpenFromYardAsync(Visit visit, string below)
    {
        await visit.OpenStaticAsync("/yard");
        await visit.Page.Locator($"a[href^='yard/'][href$='{below}']").First.ClickAsync();
        await visit.Page.Locator("form.sheet button[type=submit]").WaitForAsync();
    }

    /// <summary>The concern about the first horse of the trainer's page.</summary>
    public static async Task OpenConcernAsync(Visit visit)
    {
        await visit.OpenStaticAsync("/yard");
        await visit.Page.Locator("a[href^='concern/']").First.ClickAsync();
        await visit.Page.Locator("form.sheet button[type=submit]").WaitForAsync();
    }

    public static async Task OpenCaseAsync(Visit visit, string name)
    {
        await OpenHorseAsync(visit, name);
        await visit.Page.Locator("a[href*='/cases/']:not([href$='/new'])").First.ClickAsync();
        await visit.Page.WaitForURLAsync(address => new Uri(address).AbsolutePath.StartsWith("/cases/", StringComparison.Ordinal));
        await visit.Page.Locator(".case-ladder svg:visible").First.WaitForAsync();
        await visit.Page.Locator(".case-healing svg:visible").First.WaitForAsync();
    }

    /// <summary>The page that changes a case.</summary>
    public static async Task OpenCaseEditorAsync(Visit visit)
    {
        await OpenCaseAsync(visit, "Quillon");
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + "/edit");
        await visit.Page.Locator("#onset").WaitForAsync();
    }

    /// <summary>The case page with the ground of its verdict open.</summary>
    public static async Task OpenGroundAsync(Visit visit)
    {
        await OpenCaseAsync(visit, "Tansy Fathom");
        await visit.Page.Locator(".verdict a[aria-expanded=false]").First.ClickAsync();
        await visit.Page.Locator(".verdict a[aria-expanded=true]").WaitForAsync();
    }

    /// <summary>The case page with the figures of an early signature beside today's.</summary>
    public static async Task OpenSignedFiguresAsync(Visit visit)
    {
        await OpenCaseAsync(visit, "Brimble Hob");
        ILocator section = visit.Page.Locator("section[aria-labelledby=seen]");
        await section.Locator("li a[aria-expanded]").Last.ClickAsync();
        await section.Locator("table").WaitForAsync();
    }

    /// <summary>A draft that was begun, or the one that is under way.</summary>
    public static async Task OpenEntryAsync(Visit visit, string name)
    {
        await OpenCaseAsync(visit, name);
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + "/examinations/new");
        ILocator grid = visit.Page.Locator("table.entry-grid");
        ILocator draft = visit.Page.Locator("main a[href^='/examinations/']").First;
        await grid.Or(draft).First.WaitForAsync();
        if (await grid.CountAsync() == 0)
        {
            await draft.ClickAsync();
        }

        await Assertions.Expect(visit.Page.Locator("input[data-field]:focus")).ToHaveCountAsync(1);
    }

    /// <summary>The preview of a file with one line that is wrong.</summary>
    public static async Task OpenImportReviewAsync(Visit visit)
    {
        await visit.OpenAsync("/import");
        await visit.Page.Locator("input[type=file]").SetInputFilesAsync(Journeys.OwnSheet.WithOneWrongLine());
        await visit.Page.Locator("form[action='/import/file'] button[type=submit]").ClickAsync();
        await visit.WaitUntilLiveAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "4 examinations" }).WaitForAsync();
    }

    /// <summary>The reports of a case, with one that was released.</summary>
    public static async Task OpenReportsAsync(Visit visit)
    {
        await OpenCaseAsync(visit, "Linnet Minor");
        await visit.OpenAsync(new Uri(visit.Page.Url).AbsolutePath + "/reports");
        if (await ReportLine(visit).CountAsync() == 0)
        {
            await visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Release for ") }).ClickAsync();
        }

        await ReportLine(visit).First.WaitForAsync();
    }

    /// <summary>The page behind a new link of the first horse of a person, or of all of them.</summary>
    public static async Task OpenLinkAsync(Visit visit, string person)
    {
        await visit.OpenAsync("/people");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = person }).First.ClickAsync();
        await OpenNewLinkAsync(visit, visit.Page.Locator("section[aria-labelledby=links] li").First);
        await visit.Page.Locator("article.permit").First.WaitForAsync();
    }

    /// <summary>The report behind a new link of its reader.</summary>
    public static async Task OpenReportLinkAsync(Visit visit)
    {
        await OpenReportsAsync(visit);
        await OpenNewLinkAsync(visit, ReportLine(visit).First);
        await visit.Page.Locator("article.report").WaitForAsync();
    }

    private static ILocator ReportLine(Visit visit) =>
        visit.Page.Locator("section[aria-labelledby=links] li").Filter(new() { HasText = "Anselm Quoy, report" });

    private static async Task OpenNewLinkAsync(Visit visit, ILocator line)
    {
        await line.GetByRole(AriaRole.Button, new() { NameRegex = new("^Make a ") }).ClickAsync();
        await visit.OpenStaticAsync(await visit.Page.Locator("#share-address").InputValueAsync());
    }
}
