using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Plans;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Plans;

public sealed class PlanEditorTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_template_is_copied_into_the_draft_with_its_source_told()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Copied");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<PlanEditor> page = Open(tab, horse);

        await page.Find("button[data-template=suspensory-proximal-general]").ClickAsync(new());

        PlanTemplate template = PlanTemplates.Find("suspensory-proximal-general")!;
        page.WaitForAssertion(() => Assert.Equal(template.Steps.Count, page.FindAll(".step").Count), Patience);
        Assert.Contains(template.Source, page.Find(".stack > .notice").TextContent, StringComparison.Ordinal);
        ExerciseView view = await horse.ViewAsync();
        Assert.Equal((template.Name, template.Steps.Count), (view.Draft!.Plan.Template, view.Draft.Plan.Steps.Count));
        Assert.Null(view.Plan);
    }

    [Fact]
    public async Task What_is_not_filled_says_that_it_permits_nothing_and_the_signed_permit_is_none()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Unfilled");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<PlanEditor> page = Open(tab, horse);
        await page.Find("button[data-template=suspensory-proximal-general]").ClickAsync(new());

        Assert.All(
            page.FindAll(".step"),
            step => Assert.Contains("Not filled: permits nothing", step.TextContent, StringComparison.Ordinal)
        );
        await page.Find(".sign-plan .btn").ClickAsync(new());

        Permit permit = (await horse.ViewAsync()).Today;
        Assert.False(permit.Work.HasOuting);
        Assert.Contains(permit.Reasons, reason => reason.Code == PermitReasonCode.StepUnfilled);
    }

    [Fact]
    public async Task Caps_of_an_outing_a_day_and_a_week_are_typed_kept_and_lower_the_permit()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Capped");

        await page.Find("#cap-outing").ChangeAsync(new ChangeEventArgs { Value = "18" });
        await page.Find("#cap-day").ChangeAsync(new ChangeEventArgs { Value = "30" });
        await page.Find("#cap-week").ChangeAsync(new ChangeEventArgs { Value = "105" });

        PlanVersion kept = (await horse.ViewAsync()).Draft!.Plan;
        Assert.Equal(new PlanCaps(18, 30, 105), kept.Caps);
        await horse.SignAsync(kept);
        Work work = (await horse.ViewAsync()).Today.Work;
        Assert.Equal((18, 1, 5), (work.Outing.Walk, work.OutingsADay, work.DaysAWeek));
    }

    [Fact]
    public async Task A_problem_stands_beside_its_field_is_kept_in_the_draft_and_forbids_the_signature()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Problem");
        await page.Find("[aria-label='Change step 2']").ClickAsync(new());

        await page.Find("#step-2-trot-ceiling").ChangeAsync(new ChangeEventArgs { Value = "" });

        page.WaitForAssertion(() => Assert.NotNull(page.Find("#step-2-trot-error")), Patience);
        Assert.Equal("step-2-trot-error", page.Find("#step-2-trot-growth").GetAttribute("aria-describedby"));
        Assert.True(page.Find(".sign-plan .btn").HasAttribute("disabled"));
        Assert.Equal(new GaitRule(5, 5), (await horse.ViewAsync()).Draft!.Plan.Steps[1].Trot);
    }

    [Fact]
    public async Task An_increase_is_signed_as_an_advance_or_signed_away_but_never_by_the_way()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Advance");

        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());
        Assert.NotNull(page.Find(".increase .error"));
        Assert.Null((await horse.ViewAsync()).Plan);

        Assert.Contains("20 min", Side(page, "Walk").Last(), StringComparison.Ordinal);
        await page.Find("#sign-no-advance").ChangeAsync(new ChangeEventArgs { Value = "on" });
        Assert.StartsWith("0 min", Side(page, "Walk").Last(), StringComparison.Ordinal);
        await page.Find("#sign-advance").ChangeAsync(new ChangeEventArgs { Value = "on" });
        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());

        ExerciseView view = await horse.ViewAsync();
        Assert.True(view.Plan!.IsAdvance);
        Assert.Equal(20, view.Today.Work.Outing.Walk);
        Assert.EndsWith($"/horses/{horse.Id}/plan", tab.Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_version_that_permits_less_needs_no_advance()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Lower");
        await horse.SignAsync(HorseInRehab.Plan);
        PlanStep first = HorseInRehab.Plan.Steps[0] with { Walk = new GaitRule(10) };
        await horse.DraftAsync(HorseInRehab.Plan with { Steps = [first, HorseInRehab.Plan.Steps[1]] });
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<PlanEditor> page = Open(tab, horse);

        Assert.Empty(page.FindAll(".increase"));
        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());

        ExerciseView view = await horse.ViewAsync();
        Assert.Equal((2, false, 10), (view.Plan!.Plan.Number, view.Plan.IsAdvance, view.Today.Work.Outing.Walk));
    }

    [Fact]
    public async Task Two_people_at_one_draft_lose_nothing_until_one_chooses()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Conflict");
        await horse.DraftAsync(HorseInRehab.Plan with { Title = "Theirs" });

        await page.Find("#title").ChangeAsync(new ChangeEventArgs { Value = "Mine" });

        page.WaitForAssertion(() => Assert.NotNull(page.Find(".conflict")), Patience);
        Assert.Equal("Mine", page.Find("#title").GetAttribute("value"));
        Assert.Equal("Theirs", (await horse.ViewAsync()).Draft!.Plan.Title);
        Assert.True(page.Find(".sign-plan .form-foot .btn").HasAttribute("disabled"));

        await page.FindAll(".conflict .btn")[0].ClickAsync(new());
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".conflict")), Patience);
        Assert.Equal("Mine", (await horse.ViewAsync()).Draft!.Plan.Title);
    }

    [Fact]
    public async Task What_only_one_of_two_people_changed_is_taken_over_without_a_question()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Together");
        PlanStep trot = HorseInRehab.Plan.Steps[1] with { Trot = new GaitRule(5, 5, 10) };
        await horse.DraftAsync(HorseInRehab.Plan with { Steps = [HorseInRehab.Plan.Steps[0], trot] });

        await page.Find("#title").ChangeAsync(new ChangeEventArgs { Value = "Mine" });

        page.WaitForAssertion(() => Assert.Contains(FormTexts.ConflictMerged, page.Markup, StringComparison.Ordinal), Patience);
        Assert.Empty(page.FindAll(".conflict"));
        PlanVersion kept = (await horse.ViewAsync()).Draft!.Plan;
        Assert.Equal(("Mine", new GaitRule(5, 5, 10)), (kept.Title, kept.Steps[1].Trot));
    }

    [Fact]
    public async Task Where_both_changed_each_field_is_chosen_by_itself_and_typing_goes_on_meanwhile()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Chosen");
        PlanStep theirs = HorseInRehab.Plan.Steps[1] with { Trot = new GaitRule(5, 5, 10), Note = "on the school" };
        await horse.DraftAsync(HorseInRehab.Plan with { Title = "Theirs", Steps = [HorseInRehab.Plan.Steps[0], theirs] });
        await page.Find("[aria-label='Change step 2']").ClickAsync(new());
        await page.Find("#step-2-trot-ceiling").ChangeAsync(new ChangeEventArgs { Value = "20" });
        page.WaitForAssertion(() => Assert.Single(page.FindAll(".conflict tbody tr")), Patience);

        await page.Find("#title").ChangeAsync(new ChangeEventArgs { Value = "Mine" });
        Assert.Equal("Theirs", (await horse.ViewAsync()).Draft!.Plan.Title);
        Assert.StartsWith("2. first trot, Trot", page.Find(".conflict tbody th").TextContent, StringComparison.Ordinal);
        await page.FindAll(".conflict input[type=radio]")[1].ChangeAsync(new ChangeEventArgs { Value = "on" });
        await page.Find(".conflict .btn").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".conflict")), Patience);
        PlanVersion kept = (await horse.ViewAsync()).Draft!.Plan;
        Assert.Equal(("Mine", new GaitRule(5, 5, 10), "on the school"), (kept.Title, kept.Steps[1].Trot, kept.Steps[1].Note));
    }

    [Fact]
    public async Task What_somebody_else_wrote_is_looked_at_before_the_plan_is_signed()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Looked at");
        await page.Find("#sign-advance").ChangeAsync(new ChangeEventArgs { Value = "on" });
        await horse.DraftAsync(HorseInRehab.Plan with { Title = "Theirs" });

        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());

        page.WaitForAssertion(() => Assert.Equal("Theirs", page.Find("#title").GetAttribute("value")), Patience);
        Assert.Null((await horse.ViewAsync()).Plan);
        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());
        Assert.Equal("Theirs", (await horse.ViewAsync()).Plan!.Plan.Title);
    }

    [Fact]
    public async Task A_concern_that_came_meanwhile_is_shown_before_the_signature_counts()
    {
        await using BunitContext tab = practice.Tab();
        (HorseInRehab horse, IRenderedComponent<PlanEditor> page) = await OpenDraftAsync(tab, "Meanwhile");
        await page.Find("#sign-advance").ChangeAsync(new ChangeEventArgs { Value = "on" });
        await horse.ConcernAsync("warm above the fetlock");

        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());

        page.WaitForAssertion(
            () => Assert.Contains("warm above the fetlock", page.Find(".sign-plan").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.Null((await horse.ViewAsync()).Plan);
        await page.Find(".sign-plan .form-foot .btn").ClickAsync(new());
        Assert.NotNull((await horse.ViewAsync()).Plan);
    }

    /// <summary>The page of a draft of the usual plan, for a horse of its own.</summary>
    private async Task<(HorseInRehab Horse, IRenderedComponent<PlanEditor> Page)> OpenDraftAsync(BunitContext tab, string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, name);
        await horse.DraftAsync(HorseInRehab.Plan);
        return (horse, Open(tab, horse));
    }

    private static TimeSpan Patience => TimeSpan.FromSeconds(60);

    private static IRenderedComponent<PlanEditor> Open(BunitContext tab, HorseInRehab horse) =>
        tab.Render<PlanEditor>(page => page.Add(one => one.Id, horse.Id));

    private static IEnumerable<string> Side(IRenderedComponent<PlanEditor> page, string component) =>
        page.FindAll(".sides tbody tr")
            .First(row => row.QuerySelector("th")!.TextContent.Trim() == component)
            .QuerySelectorAll("td")
            .Select(cell => cell.TextContent.Trim());
}
