using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Thresholds;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Features.Thresholds;

public sealed class ThresholdEditorTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    private static readonly AnalysisSettings Usual = new();

    [Fact]
    public async Task A_threshold_that_is_typed_becomes_the_practices_and_the_others_stay_to_the_last_digit()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ThresholdEditor> page = tab.Render<ThresholdEditor>();
        // -0.15 log in 60 days is a fall of 13.929 %; the form rounds it, the setting must not.
        Assert.Equal("13.929", page.Find("#slowestAcceptableLogPer60Days").GetAttribute("value"));

        await TypeAsync(page, "windowExaminations", "4");
        await TypeAsync(page, "slowestAcceptableAtTrotLogPer60Days", "10");
        await TypeAsync(page, "redLigamentRise", "25,5");
        await page.Find("#threshold-form").SubmitAsync();
        // Nothing is kept before what would move was shown.
        Assert.Equal(Usual, await SettingsAsync());
        Assert.Contains("No open verdict would move", page.Find("section[aria-labelledby=moves]").TextContent, StringComparison.Ordinal);
        await page.Find("#take").ClickAsync(new());

        AnalysisSettings kept = await SettingsAsync();
        Assert.Equal(
            Usual.Trend with
            {
                WindowExaminations = 4,
                SlowestAcceptableAtTrotLogPer60Days = Math.Log(0.9),
                RedLigamentRise = 0.255,
            },
            kept.Trend
        );
        Assert.Equal((Usual.Linking, Usual.Error), (kept.Linking, kept.Error));

        await page.Find("#usual").ClickAsync(new());
        await page.Find("#threshold-form").SubmitAsync();
        await page.Find("#take").ClickAsync(new());
        Assert.True(SettingRanges.Check(await SettingsAsync()).Count == 0);
        Assert.Equal(Usual.Trend.WindowExaminations, (await SettingsAsync()).Trend.WindowExaminations);
    }

    [Theory]
    [InlineData("windowExaminations", "2", "Write a whole number from 3 to 20.")]
    [InlineData("windowExaminations", "3.5", "Write a whole number from 3 to 20.")]
    [InlineData("guardAreaCm2", "", "Write a number from 0 to 5.")]
    [InlineData("targetFraction", "0", "Write a number from 0.1 to 99.9.")]
    [InlineData("slowestAcceptableLogPer60Days", "-5", "Write a number from 0.1 to 95.021.")]
    [InlineData("healingZ", "two", "two")]
    public async Task What_cannot_be_is_told_beside_its_field_and_nothing_is_kept_or_lost(string field, string text, string told)
    {
        AnalysisSettings before = await SettingsAsync();
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ThresholdEditor> page = tab.Render<ThresholdEditor>();
        await TypeAsync(page, "acutePhaseDays", "35");
        await TypeAsync(page, field, text);

        await page.Find("#threshold-form").SubmitAsync();

        Assert.Contains(told, page.Find($"#{field}-error").TextContent, StringComparison.Ordinal);
        Assert.Equal((text, "35"), (page.Find($"#{field}").GetAttribute("value"), page.Find("#acutePhaseDays").GetAttribute("value")));
        Assert.Equal(before, await SettingsAsync());
    }

    [Fact]
    public async Task A_red_line_that_is_not_above_the_amber_one_is_refused_beside_the_red_one()
    {
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ThresholdEditor> page = tab.Render<ThresholdEditor>();
        await TypeAsync(page, "amberLigamentRise", "30");

        await page.Find("#threshold-form").SubmitAsync();

        Assert.Empty(page.FindAll("#take"));
        Assert.Contains("must lie above the amber one", page.Find("#redLigamentRise-error").TextContent, StringComparison.Ordinal);
        Assert.NotEqual(0.3, (await SettingsAsync()).Trend.AmberLigamentRise);
    }

    [Fact]
    public async Task An_assistant_reads_and_cannot_change()
    {
        await using BunitContext tab = practice.Tab(await practice.AssistantAsync());

        IRenderedComponent<ThresholdEditor> page = tab.Render<ThresholdEditor>();

        Assert.True(page.Find("fieldset").HasAttribute("disabled"));
        Assert.Empty(page.FindAll("button[type=submit]"));
    }

    [Fact]
    public void Every_field_writes_and_reads_its_value_and_both_ends_of_its_range()
    {
        foreach (ThresholdField field in ThresholdFields.All)
        {
            SettingRange range = SettingRanges.Of(field.Name)!;
            Assert.Equal(Usual, field.Take(Usual, field.Written(SettingRanges.ValueOf(Usual, field.Name))).Settings);
            AnalysisSettings other = SettingRanges.With(
                Usual,
                field.Name,
                (range.Lowest + range.Highest) / 2 is var middle && range.IsWhole ? Math.Floor(middle) : (range.Lowest + range.Highest) / 2
            );
            AnalysisSettings? read = field.Take(Usual, field.Written(SettingRanges.ValueOf(other, field.Name))).Settings;
            Assert.Equal(SettingRanges.ValueOf(other, field.Name), SettingRanges.ValueOf(read!, field.Name), 0.002);
            Assert.NotEmpty(field.Label);
            Assert.NotEmpty(field.Usual.Source);
        }
    }

    private static Task TypeAsync(IRenderedComponent<ThresholdEditor> page, string field, string text) =>
        page.Find($"#{field}").InputAsync(new ChangeEventArgs { Value = text });

    [Fact]
    public async Task Thresholds_that_two_people_change_at_once_come_together_and_what_both_changed_is_chosen()
    {
        PracticeView before = await practice.DoneAsync<GetPractice, NoInput, PracticeView>(NoInput.Value);
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ThresholdEditor> page = tab.Render<ThresholdEditor>();
        await page.TypeAsync("windowExaminations", "6");
        await page.TypeAsync("acutePhaseDays", "12");
        await practice.DoneAsync<ChangePractice, ChangePracticeInput, Saved>(
            ChangePracticeInput.Of(before, Guid.NewGuid()) with
            {
                Settings = before.Settings with { Trend = before.Settings.Trend with { WindowExaminations = 7, GuardAreaCm2 = 0.07 } },
            }
        );
        await page.Find("#threshold-form").SubmitAsync();
        await page.Find("#take").ClickAsync(new());

        page.AssertTaken(practice.Vet.Name, ": 0.07");
        page.AssertAsks("windowExaminations", "6", "7");
        await page.ChooseAsync("windowExaminations", theirs: false);
        await page.Find("#threshold-form").SubmitAsync();
        await page.Find("#take").ClickAsync(new());

        AnalysisSettings now = await SettingsAsync();
        Assert.Equal((6, 12, 0.07), (now.Trend.WindowExaminations, now.Trend.AcutePhaseDays, now.Trend.GuardAreaCm2));
    }

    private async Task<AnalysisSettings> SettingsAsync() =>
        (await practice.Services.GetRequiredService<GetPractice>().ExecuteAsync(practice.Vet, NoInput.Value)).Value.Settings;
}
