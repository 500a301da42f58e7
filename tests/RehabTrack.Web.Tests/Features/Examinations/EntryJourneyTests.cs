using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Examinations;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class EntryJourneyTests(DemoPracticeAtHand practice) : IClassFixture<DemoPracticeAtHand>
{
    private async Task<(Guid Case, Guid Draft)> StartAsync(string horse)
    {
        HorsePage found = (
            await practice.Services.GetRequiredService<FindHorses>().ExecuteAsync(practice.Vet, new FindHorsesInput { Query = horse })
        ).Value;
        Guid injury = found.Rows[0].OpenCases[0].Id;
        Saved draft = (
            await practice
                .Services.GetRequiredService<StartExamination>()
                .ExecuteAsync(practice.Vet, new StartExaminationInput { CommandId = Guid.CreateVersion7(), CaseId = injury })
        ).Value;
        return (injury, draft.Id);
    }

    private async Task ChangeOnsetAsync(CaseView injury, DateOnly onset) =>
        Assert.True(
            (
                await practice
                    .Services.GetRequiredService<ChangeCase>()
                    .ExecuteAsync(
                        practice.Vet,
                        new ChangeCaseInput
                        {
                            CommandId = Guid.CreateVersion7(),
                            Id = injury.Id,
                            Version = injury.Version,
                            Limb = injury.Course.Limb,
                            Structure = injury.Course.Structure,
                            Landmark = injury.Course.Landmark,
                            Onset = onset,
                            Reinjury = injury.Course.Reinjury,
                            TargetFraction = injury.Course.TargetFraction,
                            FirstDiagnosis = injury.FirstDiagnosis,
                            ResponsibleVetId = injury.ResponsibleVetId,
                        }
                    )
            ).Succeeded
        );

    private static IRenderedComponent<ExaminationSheet> Open(BunitContext tab, Guid draft, string query = "")
    {
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo($"/examinations/{draft}{query}");
        return tab.Render<ExaminationSheet>(page => page.Add(one => one.Id, draft));
    }

    private async Task<ExaminationView> ReadAsync(Guid id) =>
        (await practice.Services.GetRequiredService<GetExamination>().ExecuteAsync(practice.Vet, id)).Value;

    private static async Task<string> TypeAsync(IRenderedComponent<ExaminationSheet> page, string field, string text)
    {
        IRenderedComponent<EntryForm> form = page.FindComponent<EntryForm>();
        EntryAnswer answer = await page.InvokeAsync(() => form.Instance.Typed(new Dictionary<string, string> { [field] = text }, null));
        return answer.State;
    }

    private static IReadOnlyList<EntryRow> Rows(IRenderedComponent<ExaminationSheet> page) =>
        page.FindComponent<EntryForm>().Instance.Sheet.Grid.Rows;

    [Fact]
    public async Task A_recheck_is_typed_kept_as_typed_checked_and_signed_once()
    {
        (Guid injury, Guid draft) = await StartAsync("Ironbell");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ExaminationSheet> page = Open(tab, draft);
        Assert.All(Rows(page), row => Assert.True(row is { Expected: true, IsRead: false }));

        Assert.Equal(EntryStates.Sent, await TypeAsync(page, $"{Rows(page)[0].Key}|LigamentArea", "1,2 or so"));
        Assert.Contains("1,2 or so", (await ReadAsync(draft)).Typed!, StringComparison.Ordinal);

        foreach (EntryRow row in Rows(page))
        {
            await TypeAsync(page, $"{row.Key}|LigamentArea", "1,2");
            await TypeAsync(page, $"{row.Key}|LesionArea", "0");
        }

        Assert.NotEmpty(page.FindAll("section[aria-labelledby=change] tbody tr"));
        await page.InvokeAsync(() => page.FindComponent<EntryForm>().Instance.Command(EntryForm.SaveAndGoOn, "", ""));
        NavigationManager navigation = tab.Services.GetRequiredService<NavigationManager>();
        Assert.EndsWith("?step=sign", navigation.Uri, StringComparison.Ordinal);

        // Pressed twice in one breath.
        EventCallback sign = page.FindComponent<SignPanel>().Instance.Sign;
        await Task.WhenAll(page.InvokeAsync(sign.InvokeAsync), page.InvokeAsync(sign.InvokeAsync));

        Assert.EndsWith($"/cases/{injury}", navigation.Uri, StringComparison.Ordinal);
        ExaminationView signed = await ReadAsync(draft);
        Assert.Equal(ExaminationState.Signed, signed.State);
        Assert.Equal(1.2, signed.Examination.Readings[0].LigamentArea!.Value.Value);
        Assert.Null(signed.Typed);
        Assert.NotNull(Assert.Single(signed.Versions).FiguresId);
    }

    /// <summary>Whatever is typed: what the page analysed is what the records say, or nothing could ever be signed.</summary>
    [Fact]
    public async Task An_examination_with_everything_filled_in_is_signed_on_the_figures_the_page_showed()
    {
        (Guid injury, Guid draft) = await StartAsync("Linnet Minor");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ExaminationSheet> page = Open(tab, draft);
        foreach (
            (string field, string text) in (IEnumerable<(string, string)>)
                [
                    ("Date", "24 Nov 2026"),
                    ("Name", " evening "),
                    ("Stance", "NonWeightBearing"),
                    ("Examiner", " A. Vet "),
                    ("Measurer", " R. Venn "),
                    ("Transducer", "linear 12"),
                    ("Standoff", "yes"),
                    ("Coupling", "Gel"),
                    ("Clipped", "no"),
                    ("EchogenicityScale", GradeScales.Echogenicity0To4.Id),
                    ("Landmark", "AccessoryCarpalBone"),
                    ("Origin", "2,5"),
                    ("Division", "22"),
                ]
        )
        {
            await TypeAsync(page, field, text);
        }

        await page.InvokeAsync(() => page.FindComponent<EntryForm>().Instance.Command(EntryForm.Repeat, Rows(page)[0].Key, ""));
        string[] keys = [.. Rows(page).Select(row => row.Key)];
        foreach ((int index, string key) in keys.Index())
        {
            await TypeAsync(page, $"{key}|LigamentArea", $"1,{index}7");
            await TypeAsync(page, $"{key}|LesionArea", index == 2 ? "diffuse" : $"0,{index}3");
            await TypeAsync(page, $"{key}|Thickness", $"0,{index + 4}");
            await TypeAsync(page, $"{key}|Width", "2.13");
            await TypeAsync(page, $"{key}|Echogenicity", "4");
            await TypeAsync(page, $"{key}|FibreAlignment", "1");
            await TypeAsync(page, $"{key}|Lesion", " core ");
            await TypeAsync(page, $"{key}|Note", " seen twice ");
        }

        await page.InvokeAsync(() => page.FindComponent<EntryForm>().Instance.Command(EntryForm.Strike, keys[^1], ""));
        await page.InvokeAsync(() => page.FindComponent<EntryForm>().Instance.Command(EntryForm.SaveAndGoOn, "", ""));
        SignPanel panel = page.FindComponent<SignPanel>().Instance;
        Assert.True(panel.Reading.IsClean, string.Join(", ", panel.Reading.CellProblems.Select(problem => problem.Problem.Code)));
        string seen = panel.Background.HashWith(panel.Reading.Examination);

        await page.InvokeAsync(panel.Sign.InvokeAsync);

        Assert.Equal(ExaminationState.Signed, (await ReadAsync(draft)).State);
        SignedFiguresView kept = (await practice.Services.GetRequiredService<GetSignedFigures>().ExecuteAsync(practice.Vet, injury)).Value[
            0
        ];
        Assert.Equal((draft, seen), (kept.ExaminationId, kept.Figures.InputHash));
    }

    [Fact]
    public async Task A_case_that_changes_between_the_look_and_the_signature_is_looked_at_again_and_then_signed()
    {
        (Guid injury, Guid draft) = await StartAsync("Quillon");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ExaminationSheet> page = Open(tab, draft);
        foreach (EntryRow row in Rows(page))
        {
            await TypeAsync(page, $"{row.Key}|LigamentArea", "1.3");
            await TypeAsync(page, $"{row.Key}|LesionArea", "0.05");
        }

        await page.InvokeAsync(() => page.FindComponent<EntryForm>().Instance.Command(EntryForm.SaveAndGoOn, "", ""));
        CaseView before = (await practice.Services.GetRequiredService<GetCase>().ExecuteAsync(practice.Vet, injury)).Value;
        await ChangeOnsetAsync(before, before.Course.Onset!.Value.AddDays(-3));
        NavigationManager navigation = tab.Services.GetRequiredService<NavigationManager>();

        EventCallback sign = page.FindComponent<SignPanel>().Instance.Sign;
        await page.InvokeAsync(sign.InvokeAsync);

        Assert.EndsWith("?step=sign", navigation.Uri, StringComparison.Ordinal);
        Assert.Contains(ExaminationPage.SignLookAgain, page.Markup, StringComparison.Ordinal);
        Assert.Equal(ExaminationState.Draft, (await ReadAsync(draft)).State);
        Assert.Equal(0.05, (await ReadAsync(draft)).Content.Readings[0].Values.LesionAreaCm2);

        sign = page.FindComponent<SignPanel>().Instance.Sign;
        await page.InvokeAsync(sign.InvokeAsync);

        Assert.EndsWith($"/cases/{injury}", navigation.Uri, StringComparison.Ordinal);
        Assert.Equal(ExaminationState.Signed, (await ReadAsync(draft)).State);
    }

    [Fact]
    public async Task Two_people_on_one_draft_see_both_values_and_lose_none()
    {
        (_, Guid draft) = await StartAsync("Brimble Hob");
        await using BunitContext here = practice.Tab();
        await using BunitContext there = practice.Tab();
        IRenderedComponent<ExaminationSheet> mine = Open(here, draft);
        IRenderedComponent<ExaminationSheet> theirs = Open(there, draft);
        string first = Rows(mine)[0].Key;
        string second = Rows(mine)[1].Key;

        Assert.Equal(EntryStates.Sent, await TypeAsync(theirs, $"{first}|LigamentArea", "1.5"));
        Assert.Equal(EntryStates.Sent, await TypeAsync(theirs, $"{second}|LigamentArea", "1.4"));
        Assert.Equal(EntryStates.Waiting, await TypeAsync(mine, $"{first}|LigamentArea", "1.7"));

        Assert.Equal(["1.7", "1.5"], mine.FindAll(".conflict td span").Select(value => value.TextContent));
        Assert.Equal(EntryStates.Waiting, await TypeAsync(mine, $"{second}|Thickness", "0.9"));
        await mine.FindAll(".conflict input[type=radio]")[1].ChangeAsync(new ChangeEventArgs { Value = "on" });
        await mine.Find(".conflict button").ClickAsync(new());

        Assert.Empty(mine.FindAll(".conflict"));
        ExaminationContent kept = (await ReadAsync(draft)).Content;
        Assert.Equal([1.5, 1.4], kept.Readings.Take(2).Select(row => row.Values.LigamentAreaCm2!.Value));
        Assert.Equal(0.9, kept.Readings[1].Values.ThicknessCm);
    }

    [Fact]
    public async Task What_only_one_of_two_changed_is_taken_over_without_asking()
    {
        (_, Guid draft) = await StartAsync("Linnet Minor");
        await using BunitContext here = practice.Tab();
        await using BunitContext there = practice.Tab();
        IRenderedComponent<ExaminationSheet> mine = Open(here, draft);
        IRenderedComponent<ExaminationSheet> theirs = Open(there, draft);
        string[] keys = [.. Rows(mine).Select(row => row.Key)];

        await TypeAsync(theirs, $"{keys[0]}|LigamentArea", "1.5");
        Assert.Equal(EntryStates.Sent, await TypeAsync(mine, $"{keys[1]}|LigamentArea", "1.6"));

        Assert.Contains(FormTexts.ConflictMerged, mine.Markup, StringComparison.Ordinal);
        Assert.Equal([1.5, 1.6], (await ReadAsync(draft)).Content.Readings.Take(2).Select(row => row.Values.LigamentAreaCm2!.Value));
    }

    [Fact]
    public async Task A_signed_examination_is_amended_with_a_reason_and_its_earlier_version_stays_readable()
    {
        CaseView injury = (
            await practice.Services.GetRequiredService<GetCase>().ExecuteAsync(practice.Vet, (await StartAsync("Pepperwick")).Case)
        ).Value;
        Guid id = injury.Examinations.Last(card => card.State == ExaminationState.Signed).Id;
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<ExaminationSheet> page = Open(tab, id, "?amend=1");
        EntryRow row = Rows(page)[0];
        string before = row[EntryColumn.LigamentArea];
        Assert.True(page.FindAll("section[aria-labelledby=amend] button")[0].HasAttribute("disabled"));

        Assert.Equal(EntryStates.Kept, await TypeAsync(page, $"{row.Key}|LigamentArea", "1.99"));
        Assert.Contains($"{before} becomes 1.99", page.Find("section[aria-labelledby=amend]").TextContent, StringComparison.Ordinal);
        await page.FindAll("section[aria-labelledby=amend] button")[0].ClickAsync(new());
        Assert.Single((await ReadAsync(id)).Versions);

        Assert.Equal(2, page.FindAll("section[aria-labelledby=amend] .before-after .verdict").Count);
        await page.Find("#reason").ChangeAsync(new ChangeEventArgs { Value = "A slip of the decimal mark" });
        await page.FindAll("section[aria-labelledby=amend] button")[0].ClickAsync(new());

        ExaminationView amended = await ReadAsync(id);
        Assert.Equal(2, amended.Versions.Count);
        Assert.All(amended.Versions, version => Assert.NotNull(version.FiguresId));
        await using BunitContext later = practice.Tab();
        Assert.Contains(
            "A slip of the decimal mark",
            Open(later, id).Find("section[aria-labelledby=versions]").TextContent,
            StringComparison.Ordinal
        );
        IRenderedComponent<ExaminationSheet> earlier = Open(later, id, "?version=1");
        Assert.Contains(before, earlier.Find("table.readings tbody tr").TextContent, StringComparison.Ordinal);
        Assert.Contains(ExaminationPage.VersionBack, earlier.Markup, StringComparison.Ordinal);
    }
}
