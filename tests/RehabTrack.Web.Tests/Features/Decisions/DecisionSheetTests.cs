using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

public sealed class DecisionSheetTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task Without_a_signed_plan_there_is_nothing_to_decide_on()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Planless");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);

        Assert.Empty(page.FindAll(".decide"));
        Assert.Contains($"/horses/{horse.Id}/plan", page.Find(".empty a").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task For_a_horse_that_is_not_there_nothing_is_shown()
    {
        await using BunitContext tab = practice.Tab();

        Assert.Equal("", tab.Render<DecisionSheet>(page => page.Add(one => one.Id, Guid.NewGuid())).Markup.Trim());
    }

    [Fact]
    public async Task No_button_of_a_decision_stands_out_and_none_is_pressed_beforehand()
    {
        HorseInRehab horse = await InWorkAsync("Equal");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);

        IReadOnlyList<IElement> kinds = [.. page.FindAll(".kinds button")];
        Assert.Equal(Enum.GetNames<DecisionKind>(), kinds.Select(kind => kind.GetAttribute("data-kind")));
        Assert.All(kinds, kind => Assert.Equal(("btn quiet", "false"), (kind.ClassName, kind.GetAttribute("aria-pressed"))));
        Assert.Empty(page.FindAll("#sign-decision"));
    }

    [Fact]
    public async Task A_stop_shows_today_without_and_with_it_and_signs()
    {
        HorseInRehab horse = await InWorkAsync("Stopped");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);

        await page.Find("button[data-kind=Stop]").ClickAsync(new());

        Assert.Equal(["20 min", "0 min"], Side(page, "Walk").Select(cell => cell.Split('\n')[0].Trim()));
        await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = "Heat after work." });
        await page.Find("#decision-disagreement").ChangeAsync(new ChangeEventArgs { Value = "Seen by the trainer, not yet by me." });
        await page.Find("#sign-decision").ClickAsync(new());

        page.WaitForAssertion(() => Assert.NotNull(page.Find(".past")), Patience);
        ExerciseView view = await horse.ViewAsync();
        Assert.Equal(PermitState.Stopped, view.Today.State);
        Assert.Equal("Heat after work.", ((DecisionSigned)view.Decisions[0].Line.Entry).Decision.Reason);
    }

    [Fact]
    public async Task An_advance_before_its_recheck_is_told_to_raise_nothing()
    {
        HorseInRehab horse = await InWorkAsync("Early");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);

        await page.Find("button[data-kind=Advance]").ClickAsync(new());
        await page.Find("#decision-step").ChangeAsync(new ChangeEventArgs { Value = "1" });

        Assert.Contains("recheck that is not due yet", page.Find(".lacks").TextContent, StringComparison.Ordinal);
        Assert.Empty(page.FindAll(".sides .mark.amber"));
    }

    [Fact]
    public async Task Deciding_otherwise_than_suggested_asks_for_one_sentence_and_keeps_what_was_typed()
    {
        DemoPracticeAtHand demo = new();
        await demo.InitializeAsync();
        try
        {
            ExerciseView view = await DemoHorse.ViewAsync(demo, "Tansy Fathom");
            await using BunitContext tab = demo.Tab();
            IRenderedComponent<DecisionSheet> page = tab.Render<DecisionSheet>(one => one.Add(sheet => sheet.Id, view.Horse.Id));
            int before = view.Decisions.Count;

            Assert.NotEmpty(page.FindAll(".next-gate .needs li"));
            await page.Find("#heat").ChangeAsync(new ChangeEventArgs { Value = "3" });
            Assert.Contains(
                SuggestionSentences.Of(SuggestedMove.Stop, AskedStep.Trot),
                page.Find(".suggestion-said .say").TextContent,
                StringComparison.Ordinal
            );
            await page.Find("button[data-kind=Hold]").ClickAsync(new());
            await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = "Warm from travel." });
            await page.Find("#sign-decision").ClickAsync(new());

            page.WaitForAssertion(() => Assert.NotNull(page.Find("#decision-disagreement-error")), Patience);
            Assert.Equal("Warm from travel.", page.Find("#decision-reason").GetAttribute("value"));
            Assert.Equal(before, (await DemoHorse.ViewAsync(demo, "Tansy Fathom")).Decisions.Count);

            await page.Find("#decision-disagreement").ChangeAsync(new ChangeEventArgs { Value = "It was gone in an hour." });
            await page.Find("#sign-decision").ClickAsync(new());

            page.WaitForAssertion(() => Assert.Equal(before + 1, page.FindAll(".past").Count), Patience);
            DecisionView kept = (await DemoHorse.ViewAsync(demo, "Tansy Fathom")).Decisions[0];
            Assert.Equal((SuggestedMove.Stop, "It was gone in an hour."), (kept.Ground.Suggested, kept.Disagreement));
            Assert.Equal(SignGrade.Clear, kept.Ground.Visit.Heat);
        }
        finally
        {
            await demo.DisposeAsync();
        }
    }

    [Fact]
    public async Task Nothing_goes_out_before_the_release_and_then_exactly_the_sentences_that_were_shown()
    {
        HorseInRehab horse = await InWorkAsync("Released");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);
        await page.Find("button[data-kind=Hold]").ClickAsync(new());
        await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = "Internal: the owner is in a hurry." });
        await page.Find("#sign-decision").ClickAsync(new());
        page.WaitForAssertion(() => Assert.NotNull(page.Find("#release-owner")), Patience);
        Assert.Empty((await horse.YardAsync()).Release.Sentences);

        await page.Find("#release-trainer").ChangeAsync(new ChangeEventArgs { Value = "Keep to the walk.\n\nIt heals well." });
        string[] shown = [.. page.FindAll(".reader")[1].QuerySelectorAll(".as-read p:not(.fine)").Select(text => text.TextContent)];
        Assert.Equal(["Keep to the walk.", "It heals well. This does not permit more work."], shown);
        await page.Find("#release-decision").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Contains("Released on", page.Find(".release").TextContent, StringComparison.Ordinal), Patience);
        Assert.Equal(shown, (await horse.YardAsync()).Release.Sentences);
        Release kept = (await horse.ViewAsync()).Decisions[0].Release!;
        Assert.DoesNotContain(kept.Owner, sentence => sentence.Contains("hurry", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_concern_stands_on_top_with_its_words_until_somebody_says_that_it_was_seen()
    {
        HorseInRehab horse = await InWorkAsync("Worried");
        await horse.ConcernAsync("warm above the fetlock");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);

        IElement concern = page.Find(".stack > .concerns");
        Assert.Contains("Warm above the fetlock", concern.TextContent, StringComparison.Ordinal);
        Assert.Contains("Not seen yet", concern.TextContent, StringComparison.Ordinal);
        Assert.Contains("has not opened", concern.TextContent, StringComparison.Ordinal);
        await page.Find(".concern .btn").ClickAsync(new());

        page.WaitForAssertion(
            () => Assert.Contains($"seen by {practice.Vet.Name}", page.Find(".concern").TextContent, StringComparison.OrdinalIgnoreCase),
            Patience
        );
        Assert.Empty(page.FindAll(".concern .btn"));
    }

    [Fact]
    public async Task What_came_meanwhile_is_shown_and_the_typed_decision_stays()
    {
        HorseInRehab horse = await InWorkAsync("Between");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);
        await page.Find("button[data-kind=Stop]").ClickAsync(new());
        await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = "Lame at walk." });
        await horse.ConcernAsync("lame this morning");

        await page.Find("#sign-decision").ClickAsync(new());

        page.WaitForAssertion(
            () => Assert.Contains("lame this morning", page.Find(".unseen").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal("Lame at walk.", page.Find("#decision-reason").GetAttribute("value"));
        Assert.Empty((await horse.ViewAsync()).Decisions);
    }

    [Fact]
    public async Task A_correction_names_the_decision_it_corrects_and_both_tell_of_it()
    {
        HorseInRehab horse = await InWorkAsync("Corrected");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);
        await page.Find("button[data-kind=Hold]").ClickAsync(new());
        Assert.Empty(page.FindAll("#decision-corrects"));
        await page.Find("#flexion-seconds").InputAsync(new ChangeEventArgs { Value = "60" });
        await page.Find("#flexion-response").ChangeAsync(new ChangeEventArgs { Value = "2" });
        await SignAsync(page, "Wrong horse read.", 1);

        await page.Find("button[data-kind=Pause]").ClickAsync(new());
        Guid wrong = Assert.Single((await horse.ViewAsync()).Decisions).Id;
        await page.Find("#decision-corrects").ChangeAsync(new ChangeEventArgs { Value = wrong.ToString() });
        await SignAsync(page, "Rest instead.", 2);

        IReadOnlyList<IElement> past = page.FindAll(".past");
        Assert.Contains("Corrects the decision “Hold,", past[0].QuerySelector(".corrects")!.TextContent, StringComparison.Ordinal);
        Assert.Null(past[0].QuerySelector(".corrected"));
        Assert.Contains("Corrected by the decision “Pause,", past[1].QuerySelector(".corrected")!.TextContent, StringComparison.Ordinal);
        Assert.Null(past[1].QuerySelector(".corrects"));
        ExerciseView view = await horse.ViewAsync();
        Assert.Equal(view.Decisions[1].Id, view.Decisions[0].CorrectsId);
        Visit visit = view.Decisions[1].Ground.Visit;
        Assert.Equal((60, SignGrade.Slight), (visit.FlexionSeconds!.Value, visit.FlexionResponse));
    }

    [Fact]
    public async Task Ending_the_plan_says_what_goes_on_reminding_and_closes_one_case_with_its_outcome()
    {
        HorseInRehab horse = await InWorkAsync("Healed");
        Guid other = await horse.CaseAsync();
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = Open(tab, horse);
        Assert.Empty(page.FindAll(".reminding"));
        await page.Find("button[data-kind=Close]").ClickAsync(new());
        Assert.Equal(2, page.FindAll(".reminding").Count);

        await page.Find($"#close-{horse.Case}-end").ChangeAsync(new ChangeEventArgs { Value = "0" });
        await page.Find($"#close-{horse.Case}-outcome").ChangeAsync(new ChangeEventArgs { Value = "Back in full work" });
        IElement form = page.FindAll(".close-case").Single(one => one.QuerySelector($"#close-{horse.Case}-end") is not null);
        Assert.Contains("this case alone", form.TextContent, StringComparison.Ordinal);
        await form.SubmitAsync();

        page.WaitForAssertion(() => Assert.Single(page.FindAll(".reminding")), Patience);
        Assert.Contains($"/cases/{other}", page.Find(".reminding a").GetAttribute("href"), StringComparison.Ordinal);
        Assert.Contains("1 case of Healed is closed", page.Markup, StringComparison.Ordinal);
        ExerciseView view = await horse.ViewAsync();
        Assert.Equal([other], view.Horse.Cases.Where(row => row.IsOpen).Select(row => row.Id));
        Assert.True(view.Today.Work.HasOuting);

        await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = "Rehabilitation is over." });
        await page.Find("#sign-decision").ClickAsync(new());
        page.WaitForAssertion(() => Assert.NotNull(page.Find(".past")), Patience);
        Assert.Single(page.FindAll(".reminding"));
    }

    private static async Task SignAsync(IRenderedComponent<DecisionSheet> page, string reason, int decisions)
    {
        await page.Find("#decision-reason").ChangeAsync(new ChangeEventArgs { Value = reason });
        if (page.FindAll("#decision-disagreement") is [{ } differs])
        {
            await differs.ChangeAsync(new ChangeEventArgs { Value = "Seen today." });
        }

        await page.Find("#sign-decision").ClickAsync(new());
        page.WaitForAssertion(() => Assert.Equal(decisions, page.FindAll(".past").Count), Patience);
    }

    private static TimeSpan Patience => TimeSpan.FromSeconds(60);

    private async Task<HorseInRehab> InWorkAsync(string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, name);
        await horse.SignAsync(HorseInRehab.Plan);
        return horse;
    }

    private static IRenderedComponent<DecisionSheet> Open(BunitContext tab, HorseInRehab horse) =>
        tab.Render<DecisionSheet>(page => page.Add(one => one.Id, horse.Id));

    private static IEnumerable<string> Side(IRenderedComponent<DecisionSheet> page, string component) =>
        page.FindAll(".sides tbody tr")
            .First(row => row.QuerySelector("th")!.TextContent.Trim() == component)
            .QuerySelectorAll("td")
            .Select(cell => cell.TextContent.Trim());
}
