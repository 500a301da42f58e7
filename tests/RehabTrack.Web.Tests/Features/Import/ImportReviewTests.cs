using System.Text;
using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Imports;
using RehabTrack.Web.Features.Import;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Import;

public sealed class ImportReviewTests : IAsyncLifetime
{
    private const string Two =
        "case,horse,limb,structure,part,examination_date,level_cm,ligament_area_cm2,lesion_area_cm2\n"
        + "Fern LH,Fern,LH,suspensory-ligament,body,2026-03-02,20,1.40,0.30\n"
        + "Fern LH,Fern,LH,suspensory-ligament,body,2026-03-02,22,1.45,0.10\n"
        + "Fern LH,Fern,LH,suspensory-ligament,body,2026-05-04,20,1.38,0.22\n";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly EmptyPractice _practice = new();

    public Task InitializeAsync() => _practice.InitializeAsync();

    public Task DisposeAsync() => _practice.DisposeAsync();

    [Fact]
    public async Task A_file_is_previewed_and_then_imported_with_a_link_to_its_case()
    {
        await using BunitContext tab = _practice.Tab();
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, Two);
        Assert.Equal("1 horse, 1 case, 2 examinations, 3 readings", page.FindAll(".counts dd")[0].TextContent);
        await page.Find("section.confirm .btn").ClickAsync(new());
        page.WaitForElement("section.done", Patience);
        Assert.Matches("^/cases/[0-9a-f-]{36}$", page.Find("section.done a.name").GetAttribute("href")!);
    }

    [Fact]
    public async Task The_same_file_again_has_nothing_to_add()
    {
        await using BunitContext tab = _practice.Tab();
        await ImportAsync(tab, Two);
        IRenderedComponent<ImportReview> again = await OpenAsync(tab, Two);
        Assert.Equal(
            string.Format(TextCulture.Default, ImportPage.CountKnownText, "2 examinations", "3 readings"),
            again.FindAll(".counts dd")[1].TextContent
        );
        IElement button = again.Find("section.confirm .btn");
        Assert.Equal(ImportPage.ConfirmNothing, button.TextContent);
        Assert.True(button.HasAttribute("disabled"));
    }

    [Fact]
    public async Task A_figure_that_differs_is_shown_beside_the_kept_one_and_amended_only_when_ticked_and_with_a_reason()
    {
        await using BunitContext tab = _practice.Tab();
        await ImportAsync(tab, Two);
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, Two.Replace("1.45,0.10", "1.45,0.12", StringComparison.Ordinal));
        string[] row = [.. page.Find("section[aria-labelledby=differs] tbody tr").Children.Select(cell => cell.TextContent)];
        Assert.EndsWith(ColumnNames.Of("lesion_area_cm2"), row[0], StringComparison.Ordinal);
        Assert.Equal(["0.1", "0.12"], row[1..]);
        Assert.True(page.Find("section.confirm .btn").HasAttribute("disabled"));
        await page.Find("section[aria-labelledby=differs] input[type=checkbox]").ChangeAsync(new() { Value = true });
        await page.Find("section.confirm .btn").ClickAsync(new());
        page.WaitForElement("#reason-error", Patience);
        await page.Find("#reason").InputAsync(new() { Value = "typing error" });
        await page.Find("section.confirm .btn").ClickAsync(new());
        page.WaitForElement("section.done", Patience);
        IRenderedComponent<ImportReview> again = await OpenAsync(tab, Two.Replace("1.45,0.10", "1.45,0.12", StringComparison.Ordinal));
        Assert.Equal(
            string.Format(TextCulture.Default, ImportPage.CountKnownText, "2 examinations", "3 readings"),
            again.FindAll(".counts dd")[1].TextContent
        );
    }

    [Fact]
    public async Task A_wrong_cell_is_named_by_line_column_and_value_and_the_rest_can_be_imported()
    {
        await using BunitContext tab = _practice.Tab();
        IRenderedComponent<ImportReview> page = await OpenAsync(
            tab,
            Two + "Fern LH,Fern,LH,suspensory-ligament,body,2026-05-04,22,1.45,1.90\n"
        );
        string[] row = [.. page.Find("section[aria-labelledby=wrong] tbody tr").Children.Select(cell => cell.TextContent)];
        Assert.Equal("5", row[0]);
        Assert.Equal("lesion_area_cm2", row[1]);
        Assert.Equal("1.90", row[2]);
        Assert.NotEmpty(row[3]);
        Assert.False(page.Find("section.confirm .btn").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Columns_of_another_name_are_asked_for_once()
    {
        const string Foreign = "Tier;Bein;Stelle;Wann;Tiefe;Fläche mm2\nFarn;LH;body;02.03.2026;20;140\n";
        await using BunitContext tab = _practice.Tab();
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, Foreign, "table.mapping");
        await ChooseAsync(page, () => SelectOf(page, "Tier"), "case");
        await ChooseAsync(page, () => SelectOf(page, "Bein"), "limb");
        await ChooseAsync(page, () => SelectOf(page, "Stelle"), "part");
        await ChooseAsync(page, () => SelectOf(page, "Wann"), "examination_date");
        await ChooseAsync(page, () => SelectOf(page, "Tiefe"), "level_cm");
        await ChooseAsync(page, () => SelectOf(page, "Fläche mm2"), "ligament_area_cm2");
        await ChooseAsync(page, () => SelectOf(page, "Fläche mm2", 1), "Millimetre");
        await ChooseAsync(page, () => page.Find("#date-order"), "1");
        await page.Find("form").SubmitAsync();
        page.WaitForElement(".counts", Patience);
        Assert.Equal("1 horse, 1 case, 1 examination, 1 reading", page.FindAll(".counts dd")[0].TextContent);
        await OpenAsync(tab, Foreign.Replace("Farn", "Moos", StringComparison.Ordinal), ".counts");
    }

    [Fact]
    public async Task A_column_that_was_not_read_stands_in_sight_and_its_meaning_can_be_said()
    {
        await using BunitContext tab = _practice.Tab();
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, Two.Replace("lesion_area_cm2", "hole", StringComparison.Ordinal));
        Assert.Contains("The column hole", page.Find("#unread").TextContent, StringComparison.Ordinal);
        await page.Find("#unread button").ClickAsync(new());
        await ChooseAsync(page, () => SelectOf(page, "hole"), "lesion_area_cm2");
        await page.Find("form").SubmitAsync();
        page.WaitForElement(".counts", Patience);

        Assert.Empty(page.FindAll("#unread"));
        await page.Find("section.confirm .btn").ClickAsync(new());
        page.WaitForElement("section.done", Patience);
        IRenderedComponent<ImportReview> again = await OpenAsync(tab, Two);
        Assert.Equal(
            string.Format(TextCulture.Default, ImportPage.CountKnownText, "2 examinations", "3 readings"),
            again.FindAll(".counts dd")[1].TextContent
        );
    }

    [Fact]
    public async Task A_horse_of_the_same_name_and_another_chip_must_be_chosen_before_anything_is_imported()
    {
        await using BunitContext tab = _practice.Tab();
        const string Head = "case,horse,microchip,part,examination_date,level_cm,ligament_area_cm2\n";
        await ImportAsync(tab, Head + "one,Fern,999000000000001,body,2026-03-02,20,1.40\n");
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, Head + "two,Fern,999000000000002,body,2026-03-02,20,1.40\n");
        Assert.Contains("999000000000001", page.Find("section[aria-labelledby=same]").TextContent, StringComparison.Ordinal);
        Assert.True(page.Find("section.confirm .btn").HasAttribute("disabled"));
        await page.FindAll("section[aria-labelledby=same] input[type=radio]")[0].ChangeAsync(new() { Value = "on" });
        page.WaitForAssertion(() => Assert.False(page.Find("section.confirm .btn").HasAttribute("disabled")), Patience);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\u0001\u0002PK")]
    public async Task A_file_that_is_no_sheet_gets_its_sentence(string content)
    {
        await using BunitContext tab = _practice.Tab();
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, content, ".verdict.red");
        Assert.Equal(ImportPage.NotReadable, page.Find(".verdict .say").TextContent);
    }

    private async Task ImportAsync(BunitContext tab, string content)
    {
        IRenderedComponent<ImportReview> page = await OpenAsync(tab, content);
        await page.Find("section.confirm .btn").ClickAsync(new());
        page.WaitForElement("section.done", Patience);
    }

    private async Task<IRenderedComponent<ImportReview>> OpenAsync(BunitContext tab, string content, string until = ".counts")
    {
        Guid id = (
            await _practice
                .Services.GetRequiredService<StageImportFile>()
                .ExecuteAsync(_practice.Vet, new StageImportFileInput(Guid.CreateVersion7(), "past.csv", Encoding.UTF8.GetBytes(content)))
        )
            .Value
            .Id;
        IRenderedComponent<ImportReview> page = tab.Render<ImportReview>(parameters => parameters.Add(review => review.Id, id));
        page.WaitForElement(until, Patience);
        return page;
    }

    private static IElement SelectOf(IRenderedComponent<ImportReview> page, string heading, int place = 0) =>
        page.FindAll("table.mapping tbody tr")
            .Single(row => row.QuerySelector("th")!.TextContent.Trim().StartsWith(heading, StringComparison.Ordinal))
            .QuerySelectorAll("select")[place];

    // Found and changed in one turn of the page: between two turns it may draw itself again, and the change would go to what was there before.
    private static Task ChooseAsync(IRenderedComponent<ImportReview> page, Func<IElement> select, string value) =>
        page.InvokeAsync(() => select().ChangeAsync(new() { Value = value }));
}
