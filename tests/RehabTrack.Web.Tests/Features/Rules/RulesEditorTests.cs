using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Suggestions;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Rules;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Rules;

public sealed class RulesEditorTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task A_rule_is_turned_off_and_a_limit_is_moved_and_both_are_kept()
    {
        Rule rule = RuleTable.All.First(one => one.Code == RuleCode.AdvanceToTrot);
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<RulesEditor> page = tab.Render<RulesEditor>();

        await page.Find($"#rule-{rule.Id}").ChangeAsync(new ChangeEventArgs { Value = false });
        await page.Find("#trot-after").InputAsync(new ChangeEventArgs { Value = "70" });
        await page.Find("form").SubmitAsync();

        RuleSettings kept = await RulesAsync();
        Assert.Equal((false, 70), (kept.IsOn(rule), kept.TrotAfterDays));
        Assert.True(kept.IsOn(RuleTable.All.First(one => one.Code == RuleCode.AdvanceToCanter)));
        Assert.NotNull(page.Find("[role=status] .notice"));
    }

    [Theory]
    [InlineData("trot-after", "trotAfterDays", "366")]
    [InlineData("canter-grade", "canterHighestGrade", "4")]
    [InlineData("shock-wave-days", "shockWaveDays", "ten")]
    public async Task A_limit_out_of_its_range_is_told_beside_its_field_and_nothing_is_kept(string field, string name, string text)
    {
        RuleSettings before = await RulesAsync();
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<RulesEditor> page = tab.Render<RulesEditor>();

        await page.Find($"#{field}").InputAsync(new ChangeEventArgs { Value = text });
        await page.Find("form").SubmitAsync();

        string told = page.Find($"#{field}-error").TextContent;
        Assert.Contains(
            RuleSettings.Ranges[name].Lowest.ToString(System.Globalization.CultureInfo.InvariantCulture),
            told,
            StringComparison.Ordinal
        );
        Assert.Equal(text, page.Find($"#{field}").GetAttribute("value"));
        Assert.Equal(before, await RulesAsync());
    }

    [Fact]
    public async Task Rules_that_two_people_change_at_once_come_together_and_what_both_changed_is_chosen()
    {
        PracticeView before = await practice.DoneAsync<GetPractice, NoInput, PracticeView>(NoInput.Value);
        Rule rule = RuleTable.All.First(one => one.Code == RuleCode.NotSound);
        RuleCode[] off = [.. RuleTable.All.Where(one => !before.Settings.Rules.IsOn(one)).Select(one => one.Code), rule.Code];
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<RulesEditor> page = tab.Render<RulesEditor>();
        await page.TypeAsync("trot-after", "61");
        await page.TypeAsync("shock-wave-days", "11");
        await practice.DoneAsync<ChangePractice, ChangePracticeInput, Saved>(
            ChangePracticeInput.Of(before, Guid.NewGuid()) with
            {
                Settings = before.Settings with { Rules = (before.Settings.Rules with { TrotAfterDays = 62 }).WithOff(off) },
            }
        );

        await page.Find("form").SubmitAsync();

        page.AssertTaken(practice.Vet.Name, $": {SuggestionTexts.No}");
        page.AssertAsks("trot-after", "61", "62");
        await page.ChooseAsync("trot-after", theirs: true);
        await page.Find("form").SubmitAsync();

        RuleSettings now = await RulesAsync();
        Assert.Equal((62, 11, false), (now.TrotAfterDays, now.ShockWaveDays, now.IsOn(rule)));
    }

    private async Task<RuleSettings> RulesAsync() =>
        (await practice.Services.GetRequiredService<GetPractice>().ExecuteAsync(practice.Vet, NoInput.Value)).Value.Settings.Rules;
}
