using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Backups;
using RehabTrack.Web.Hosting;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Backups;

public sealed class BackupsPageTests(EmptyPractice practice) : IClassFixture<EmptyPractice>, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-copies-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Without_a_folder_the_page_says_that_no_backups_are_made_and_offers_no_button()
    {
        await using BunitContext tab = Tab(null);
        IRenderedComponent<BackupsPage> page = tab.Render<BackupsPage>();

        Assert.Contains(BackupPage.NoFolder, page.Markup, StringComparison.Ordinal);
        Assert.Empty(page.FindAll("button"));
    }

    [Fact]
    public async Task A_backup_made_by_hand_stands_in_the_list_and_cannot_be_fetched()
    {
        await using BunitContext tab = Tab(_folder);
        IRenderedComponent<BackupsPage> page = tab.Render<BackupsPage>();
        Assert.Contains(BackupPage.LastNone, page.Markup, StringComparison.Ordinal);

        await page.Find("button").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Single(page.FindAll("tbody tr")));
        string row = page.Find("tbody tr").TextContent;
        Assert.Contains($"{Figures.Date(new DateOnly(2026, 11, 25))}, 09:00", row, StringComparison.Ordinal);
        Assert.Contains(BackupPage.ByHand, row, StringComparison.Ordinal);
        Assert.Contains($"The next is due {Figures.Date(new DateOnly(2026, 11, 26))}, 02:30.", page.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(page.FindAll("a"), link => link.GetAttribute("href") != "/practice");
        Assert.Single(Directory.EnumerateFiles(_folder, "*.zip"));
    }

    [Fact]
    public async Task One_that_failed_is_told_with_what_to_do()
    {
        await using BunitContext tab = Tab(_folder);
        IRenderedComponent<BackupsPage> page = tab.Render<BackupsPage>();
        using (FileStream other = new(Path.Combine(_folder, "backup.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
        {
            await page.Find("button").ClickAsync(new());
            page.WaitForAssertion(() => Assert.NotEmpty(page.FindAll("[role=alert]")));
        }

        Assert.Contains("Wait until it is done", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_assistant_does_not_see_them()
    {
        Outcome<BackupsView> refused = await practice
            .Services.GetRequiredService<ListBackups>()
            .ExecuteAsync(await practice.AssistantAsync(), NoInput.Value);

        Assert.Equal("not-allowed", Assert.Single(refused.Problems).Code);
    }

    private BunitContext Tab(string? folder)
    {
        BunitContext tab = practice.Tab();
        tab.Services.AddSingleton(new AppMode(false, "/data"));
        tab.Services.AddSingleton(new BackupSettings { Folder = folder });
        return tab;
    }
}
