using System.Text.RegularExpressions;
using Microsoft.Playwright;
using RehabTrack.Browser.Tests.EveryPage;
using RehabTrack.Browser.Tests.Harness;

namespace RehabTrack.Browser.Tests.Journeys;

/// <summary>Trainer, vet and owner of one horse, each at their own window.</summary>
[Collection(BrowserCollection.Name)]
public sealed class ExerciseTests(ChromiumFixture chromium, OwnDemoFixture demo) : IClassFixture<OwnDemoFixture>
{
    [Fact]
    public async Task A_trainer_logs_the_day_and_reports_a_concern_by_phone_and_the_vet_sees_the_drop()
    {
        await using Visit trainer = await chromium.VisitAsync(demo.App, Screen.Phone);
        await trainer.SignInByNameAsync("Oona Treske");
        ILocator horse = trainer.Page.Locator("article.permit", new() { HasText = "Quillon" });
        await Assertions.Expect(horse.Locator(".permit-say")).ToContainTextAsync("Walk 20 min, trot 25 min");

        await horse.Locator("form[action$='/done'] button").ClickAsync();
        await Assertions.Expect(trainer.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("The work of today is logged.");
        await Assertions.Expect(horse).ToContainTextAsync("Logged today: walk 20 min, trot 25 min");

        await horse.Locator("a.alarm").ClickAsync();
        await Assertions.Expect(trainer.Page.Locator(".notice.red a[href^='tel:']:visible").First).ToBeVisibleAsync();
        await trainer.Page.Locator("#words").FillAsync("warm, left hind");
        await trainer.Page.Locator("button.danger").ClickAsync();
        await Assertions.Expect(horse).ToContainTextAsync("Nobody of the practice has seen it yet.");
        await Assertions.Expect(horse.Locator(".permit-say")).ToHaveTextAsync("Walk 10 min");

        await using Visit vet = await chromium.VisitAsync(demo.App);
        await vet.SignInByNameAsync("Tamsin Orrel");
        await vet.OpenAsync("/");
        ILocator waiting = vet.Page.Locator(".concerns li", new() { HasText = "Quillon" });
        await Assertions.Expect(waiting).ToContainTextAsync("Warm, left hind");
        await Assertions.Expect(waiting.Locator(".sheet-head .mark")).ToHaveTextAsync("Yours");
        string plan = (await waiting.Locator("a.name").GetAttributeAsync("href"))!;
        await waiting.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(waiting).ToHaveCountAsync(0);
        await vet.OpenAsync(plan);
        await Assertions.Expect(vet.Page.Locator(".permit-card .permit-say")).ToHaveTextAsync("Walk 10 min");

        await trainer.Page.ReloadAsync();
        await Assertions.Expect(horse).ToContainTextAsync("Seen by Tamsin Orrel");
        Assert.Empty(trainer.Complaints);
        Assert.Empty(vet.Complaints);
    }

    [Fact]
    public async Task A_hold_is_signed_and_the_owner_reads_nothing_of_it_before_it_is_released()
    {
        await using Visit owner = await chromium.VisitAsync(demo.App);
        await owner.SignInByNameAsync("Jory Fenwater");
        ILocator released = owner.Page.Locator("article.permit", new() { HasText = "Tansy Fathom" }).Locator(".released");
        await Assertions.Expect(released).ToHaveCountAsync(1);

        await using Visit vet = await chromium.VisitAsync(demo.App);
        await vet.SignInByNameAsync("Tamsin Orrel");
        await DemoPages.OpenBelowHorseAsync(vet, "Tansy Fathom", "/decision");
        await vet.Page.Locator("button[data-kind=Hold]").ClickAsync();
        await vet.Page.Locator("#decision-reason").FillAsync("the bright patch looks as it did");
        await vet.Page.Locator("#decision-reason").BlurAsync();
        ILocator disagreement = vet.Page.Locator("#decision-disagreement");
        if (await disagreement.CountAsync() > 0)
        {
            await disagreement.FillAsync("she goes well, and I see her again in a week");
            await disagreement.BlurAsync();
        }

        await vet.Page.Locator("#sign-decision").ClickAsync();
        await vet.Page.Locator("#release-decision").WaitForAsync();

        await owner.Page.ReloadAsync();
        await Assertions.Expect(released).ToContainTextAsync("no longer counts. What stands above counts.");
        Assert.DoesNotMatch(new Regex("bright patch|goes well"), await owner.Page.Locator("body").InnerTextAsync());

        await vet.Page.Locator("#release-owner").FillAsync("Tansy Fathom stays at a quiet walk until we have looked again.");
        await vet.Page.Locator("#release-owner").BlurAsync();
        await vet.Page.Locator("#release-decision").ClickAsync();
        await Assertions.Expect(vet.Page.Locator("#release-decision")).ToHaveTextAsync("Release anew");

        await owner.Page.ReloadAsync();
        await Assertions.Expect(released).ToContainTextAsync("Tansy Fathom stays at a quiet walk until we have looked again.");
        Assert.DoesNotMatch(new Regex("bright patch|goes well"), await owner.Page.Locator("body").InnerTextAsync());
        Assert.Empty(owner.Complaints);
        Assert.Empty(vet.Complaints);
    }
}
