using Bunit;
using RehabTrack.Web.Features.Horses;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Horses;

/// <summary>Before a horse is put away the page says what goes with it.</summary>
public sealed class HorsePutAwayTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task The_question_names_an_open_case_and_a_plan_in_force_when_there_are()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(kept, "Marram Dune");
        string before = await AskedAsync(horse);
        await horse.SignAsync(HorseInRehab.Plan);

        string after = await AskedAsync(horse);

        Assert.Contains(HorsePageTexts.ArchiveOpenCase, before, StringComparison.Ordinal);
        Assert.DoesNotContain(HorsePageTexts.ArchivePlan, before, StringComparison.Ordinal);
        Assert.Contains(HorsePageTexts.ArchiveOpenCase, after, StringComparison.Ordinal);
        Assert.Contains(HorsePageTexts.ArchivePlan, after, StringComparison.Ordinal);
    }

    private async Task<string> AskedAsync(HorseInRehab horse)
    {
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<HorseDetail> page = tab.Render<HorseDetail>(parameters => parameters.Add(detail => detail.Id, horse.Id));
        page.WaitForElement("section.below-all .link-button");
        await page.Find("section.below-all .link-button").ClickAsync(new());
        return page.Find("#archive-say").TextContent;
    }
}
