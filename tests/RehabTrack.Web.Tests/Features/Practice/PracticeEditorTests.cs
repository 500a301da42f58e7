using Bunit;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Practice;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Practice;

/// <summary>A practice that two people change at once.</summary>
public sealed class PracticeEditorTests(EmptyPractice kept) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task What_both_changed_is_chosen_and_the_rest_comes_together()
    {
        PracticeView before = await ReadAsync();
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<PracticeEditor> page = tab.Render<PracticeEditor>();
        await page.TypeAsync("phone", "0043 1 111");
        await page.TypeAsync("interval", "50");
        await page.TypeAsync("access-kept", "365");
        await kept.DoneAsync<ChangePractice, ChangePracticeInput, Saved>(
            ChangePracticeInput.Of(before, Guid.NewGuid()) with
            {
                Phone = "0043 1 222",
                ShowChangeWhileEntering = !before.ShowChangeWhileEntering,
                AccessKeptDays = 400,
                ContactKeptDays = 500,
            }
        );

        await page.Find("form").SubmitAsync();

        page.AssertTaken(
            kept.Vet.Name,
            $"{PracticePage.ContactKept}: 500",
            $"{PracticePage.ShowChange}: {(before.ShowChangeWhileEntering ? SuggestionTexts.No : SuggestionTexts.Yes)}"
        );
        page.AssertAsks("phone", "0043 1 111", "0043 1 222");
        page.AssertAsks("access-kept", "365", "400");
        await page.ChooseAsync("access-kept", theirs: false);
        Assert.Equal("50", page.Find("#interval").GetAttribute("value"));
        await page.ChooseAsync("phone", theirs: true);
        await page.Find("form").SubmitAsync();

        PracticeView now = await ReadAsync();
        Assert.Equal(
            ("0043 1 222", 50, !before.ShowChangeWhileEntering),
            (now.Phone, now.RecheckIntervalDays, now.ShowChangeWhileEntering)
        );
        Assert.Equal((365, 500), (now.AccessKeptDays, now.ContactKeptDays));
        Assert.Empty(page.FindAll(".met"));
        Assert.NotNull(page.Find("[role=status] .notice"));
    }

    [Fact]
    public async Task What_the_other_changed_beside_the_form_stays_theirs_and_the_form_is_saved_at_once()
    {
        PracticeView before = await ReadAsync();
        await using BunitContext tab = kept.Tab();
        IRenderedComponent<PracticeEditor> page = tab.Render<PracticeEditor>();
        await page.TypeAsync("name", "Fell Side Practice");
        await kept.DoneAsync<ChangePractice, ChangePracticeInput, Saved>(
            ChangePracticeInput.Of(before, Guid.NewGuid()) with
            {
                Settings = before.Settings with { Rules = before.Settings.Rules with { TrotAfterDays = 77 } },
            }
        );

        await page.Find("form").SubmitAsync();

        PracticeView now = await ReadAsync();
        Assert.Equal(("Fell Side Practice", 77), (now.Name, now.Settings.Rules.TrotAfterDays));
        Assert.Empty(page.FindAll(".met"));
    }

    private Task<PracticeView> ReadAsync() => kept.DoneAsync<GetPractice, NoInput, PracticeView>(NoInput.Value);
}
