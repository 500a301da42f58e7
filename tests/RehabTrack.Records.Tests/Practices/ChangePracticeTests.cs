using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Analysis;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Practices;

public sealed class ChangePracticeTests
{
    [Fact]
    public async Task New_settings_renew_what_is_kept_of_every_case_and_a_new_interval_moves_the_due_dates()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Guid caseId = (await house.CaseAsync((await house.HorseAsync()).Id)).Id;
        await house.SignedAsync(caseId, Wishes.Content(new DateOnly(2026, 6, 1), (10, 0), (12, 0.5)));
        string before = await HashAsync(house, caseId);
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        AnalysisSettings wide = practice.Settings with { Error = practice.Settings.Error with { LesionAreaCv = 0.3 } };

        Saved changed = (await ChangeAsync(house, Input(practice) with { Settings = wide, RecheckIntervalDays = 30 })).Value;

        CaseView view = (await house.Get<GetCase>().ExecuteAsync(house.Vet, caseId)).Value;
        Assert.NotEqual(before, await HashAsync(house, caseId));
        Assert.Equal(wide, view.Practice.Settings);
        Assert.Equal(new DateOnly(2026, 7, 1), view.Summary!.DueOn);
        Assert.Equal(changed.Version, view.Practice.Version);
    }

    [Fact]
    public async Task The_tables_settings_are_not_kept_as_the_practices_own()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;

        await ChangeAsync(house, Input(practice) with { Settings = new AnalysisSettings() });

        Assert.Null(await house.LookAsync(records => records.Practices.Select(record => record.SettingsJson).FirstAsync()));
    }

    [Fact]
    public async Task All_that_is_wrong_is_told_at_once()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PracticeView practice = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        AnalysisSettings wrong = practice.Settings with
        {
            Trend = practice.Settings.Trend with { WindowExaminations = 1, TargetFraction = double.NaN },
        };

        Outcome<Saved> refused = await ChangeAsync(
            house,
            Input(practice) with
            {
                Name = " ",
                Phone = "call",
                TimeZone = "Mars/Olympus",
                RecheckIntervalDays = 0,
                AccessKeptDays = 89,
                ContactKeptDays = 3651,
                Settings = wrong,
            }
        );

        Assert.Equal(
            [
                ("name", "field-empty"),
                ("phone", "phone-unreadable"),
                ("timeZone", "time-zone-unknown"),
                ("recheckIntervalDays", "interval-out-of-range"),
                ("accessKeptDays", "interval-out-of-range"),
                ("contactKeptDays", "interval-out-of-range"),
                ("settings.trend.windowExaminations", "setting-not-whole-in-range"),
                ("settings.trend.targetFraction", "setting-not-in-range"),
            ],
            refused.Problems.Select(problem => (problem.Field, problem.Code))
        );
    }

    [Fact]
    public async Task Somebody_who_changed_it_meanwhile_is_told_with_both_values()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        PracticeView read = (await house.Get<GetPractice>().ExecuteAsync(house.Vet, NoInput.Value)).Value;
        await ChangeAsync(house, Input(read) with { Name = "Hollin Down" });

        Problem told = Assert.Single((await ChangeAsync(house, Input(read) with { Name = "Hollin Top" })).Problems);

        Assert.Equal(("name", "changed-meanwhile"), (told.Field, told.Code));
        Assert.Equal(["Hollin Down", "Hollin Top"], told.Arguments);
    }

    private static ChangePracticeInput Input(PracticeView practice) =>
        new()
        {
            CommandId = Guid.NewGuid(),
            Version = practice.Version,
            Name = practice.Name,
            Phone = practice.Phone,
            TimeZone = practice.TimeZone,
            Language = practice.Language,
        };

    private static Task<Outcome<Saved>> ChangeAsync(RecordsHouse house, ChangePracticeInput input) =>
        house.Get<ChangePractice>().ExecuteAsync(house.Vet, input);

    private static Task<string> HashAsync(RecordsHouse house, Guid caseId) =>
        house.LookAsync(async records => (await records.CaseSummaries.FindAsync(caseId))!.SettingsHash);
}
