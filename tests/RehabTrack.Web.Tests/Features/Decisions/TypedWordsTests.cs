using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Components.Forms;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

/// <summary>What somebody else is typing into a decision is told in the words of its form.</summary>
public sealed class TypedWordsTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    public static TheoryData<DecisionKind> Kinds => [.. Enum.GetValues<DecisionKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Every_field_of_the_form_has_its_words_and_every_choice_the_words_of_the_form(DecisionKind kind)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, $"Worded {kind}");
        await horse.SignAsync(HorseInRehab.Plan);
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = tab.Render<DecisionSheet>(with => with.Add(one => one.Id, horse.Id));
        // What only some answers ask for.
        await page.Find("#asked-step").ChangeAsync(new ChangeEventArgs { Value = ((int)AskedStep.Trot).ToString(TextCulture.Default) });
        await page.Find("#shock-wave").ChangeAsync(new ChangeEventArgs { Value = "2" });
        await page.Find($"button[data-kind={kind}]").ClickAsync(new());
        foreach (IElement tick in page.FindAll("#decision-has-floor"))
        {
            await tick.ChangeAsync(new ChangeEventArgs { Value = true });
        }

        ExerciseView view = await horse.ViewAsync();
        TypedWords words = new(view.Plan!.Plan, view.Decisions);
        IElement[] fields = [.. page.FindAll(".typed-keeper :is(input, select, textarea)[id]")];
        Assert.NotEmpty(fields);
        Assert.All(fields, field => Assert.NotEqual(field.Id, words.NameOf(field.Id!)));
        Assert.All(fields, field => Assert.NotEqual(int.MaxValue, words.PlaceOf(field.Id!)));
        Assert.All(
            fields.SelectMany(field => field.QuerySelectorAll("option").Select(option => (field.Id, Option: option))),
            choice => Assert.Equal(choice.Option.TextContent, words.ValueOf(choice.Id!, choice.Option.GetAttribute("value")!))
        );
        foreach (
            IElement field in fields.Where(field => page.FindAll($"label[for={field.Id}]").Count > 0 && field.Id != "decision-disagreement")
        )
        {
            string label = page.Find($"label[for={field.Id}]").FirstChild!.TextContent.Trim();
            Assert.Contains(label, words.NameOf(field.Id!), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task What_another_vet_types_stands_in_words_beside_ones_own_in_the_order_of_the_form()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Beside");
        await horse.SignAsync(HorseInRehab.Plan);
        Actor assistant = await practice.AssistantAsync();
        Dictionary<string, string?> typed = new(StringComparer.Ordinal)
        {
            ["decision-step"] = "1",
            ["kind"] = nameof(DecisionKind.StepBack),
            ["decision-recheck"] = "2026-12-09",
            ["heat"] = "1",
            ["decision-has-floor"] = "true",
            ["How|in hand"] = "false",
        };
        Assert.Empty(
            (
                await practice
                    .Services.GetRequiredService<KeepTyped>()
                    .ExecuteAsync(assistant, new KeepTypedInput(Guid.NewGuid(), horse.Id, TypedForm.Decision, typed))
            ).Problems
        );
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<DecisionSheet> page = tab.Render<DecisionSheet>(with => with.Add(one => one.Id, horse.Id));

        Assert.Equal(
            [
                (DecisionPage.Heat, DecisionChoices.Grades[1].Text),
                (DecisionPage.Decision, Names.AsTitle(Names.Of(DecisionKind.StepBack))),
                (DecisionPage.PlaceStep, "2. first trot"),
                (DecisionPage.Recheck, Figures.Date(new DateOnly(2026, 12, 9))),
                (DecisionPage.HasFloor, SuggestionTexts.Yes),
                ("How: in hand", SuggestionTexts.No),
            ],
            page.FindAll(".typed-by-other tbody tr")
                .Select(row => (row.QuerySelector("th")!.TextContent, row.QuerySelectorAll("td")[1].TextContent))
        );
        Assert.All(
            page.FindAll(".typed-by-other tbody tr"),
            row => Assert.Equal(FormTexts.ConflictBlank, row.QuerySelectorAll("td")[0].TextContent)
        );
    }

    [Fact]
    public async Task A_decision_to_be_corrected_is_known_by_itself_and_not_by_its_place()
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, "Corrected later");
        await horse.SignAsync(HorseInRehab.Plan);
        await using BunitContext tab = practice.Tab();
        Choice<Guid?>[] before = [.. DecisionChoices.Corrects(await DecidedAsync(horse))];
        Choice<Guid?>[] after = [.. DecisionChoices.Corrects(await DecidedAsync(horse))];

        Assert.Equal((1, 2), (before.Length, after.Length));
        Assert.Equal(before[0].Key, after[1].Key);
        Assert.NotEqual(after[0].Key, after[1].Key);
    }

    private static async Task<IReadOnlyList<DecisionView>> DecidedAsync(HorseInRehab horse) =>
        (await horse.DecideAsync(DecisionKind.Pause, HorseInRehab.Today.AddDays(7))).Decisions;
}
