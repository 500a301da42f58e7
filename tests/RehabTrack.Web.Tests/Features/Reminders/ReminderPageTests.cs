using Bunit;
using RehabTrack.Web.Features.Reminders;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Reminders;

/// <summary>The letter about a recheck leaves by the clipboard and by the printer as it stands on the page.</summary>
public sealed class ReminderPageTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task The_letter_is_copied_whole_and_printed_without_what_is_not_the_letter()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Thistle Vane");
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<ReminderPage> page = tab.Render<ReminderPage>(parameters => parameters.Add(one => one.CaseId, horse.Case));
        page.WaitForElement(".reminder-letter");
        string letter = page.Find(".reminder-letter").TextContent;
        Assert.Contains("Thistle Vane", letter, StringComparison.Ordinal);

        await page.FindAll(".sheet .form-foot button")[0].ClickAsync(new());
        Assert.Equal(letter, Assert.Single(tab.JSInterop.Invocations["navigator.clipboard.writeText"]).Arguments[0]);
        Assert.Equal(ReminderTexts.Copied, page.Find("[role=status]").TextContent.Trim());

        await page.FindAll(".sheet .form-foot button")[1].ClickAsync(new());
        Assert.Single(tab.JSInterop.Invocations["print"]);
        Assert.Empty(page.FindAll(".no-print .reminder-letter"));
        Assert.All(page.FindAll(".page-head, .tabs, #mail, [role=status]"), part => Assert.NotNull(part.Closest(".no-print")));
    }
}
