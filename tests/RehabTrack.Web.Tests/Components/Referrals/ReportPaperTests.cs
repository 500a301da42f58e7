using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Referrals;
using RehabTrack.Reports.Paper;
using RehabTrack.Web.Components.Referrals;
using RehabTrack.Web.Features.About;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;
using UglyToad.PdfPig;

namespace RehabTrack.Web.Tests.Components.Referrals;

/// <summary>The paper of a report beside its page; read by a reader that had no part in writing it: PdfPig 0.1.16.</summary>
public sealed class ReportPaperTests(DemoPracticeAtHand practice) : IClassFixture<DemoPracticeAtHand>
{
    [Fact]
    public async Task Paper_says_what_the_page_says_for_every_case_of_the_demo()
    {
        bool hasPlan = false;
        bool hasDecision = false;
        bool hasVerdict = false;
        foreach (Guid injury in await CasesAsync())
        {
            ReportContent content = (await practice.Services.GetRequiredService<ListReports>().ExecuteAsync(practice.Vet, injury))
                .Value
                .Today with
            {
                Words = "Seen with thanks.\nThe second line.",
            };
            await using BunitContext tab = practice.Tab();
            IRenderedComponent<ReportSheet> page = tab.Render<ReportSheet>(given =>
                given.Add(one => one.Content, content).Add(one => one.Label, "report")
            );
            byte[] file = PaperFile.Write(
                ReportPaper.Of(new ReportView(Guid.NewGuid(), "Anwen Quill", new DateTime(2026, 3, 1, 9, 0, 0, DateTimeKind.Utc), content))
            );

            using PdfDocument paper = PdfDocument.Open(file);
            string read = Bare(string.Concat(paper.GetPages().Select(sheet => sheet.Text)));
            Assert.DoesNotContain("\uFFFD", read, StringComparison.Ordinal);
            foreach (IElement said in page.FindAll("h2, h3, dt, dd, td, th[scope=row] .name, p, li"))
            {
                foreach (string words in said.TextContent.Split(" ", StringSplitOptions.RemoveEmptyEntries))
                {
                    Assert.Contains(Bare(words), read, StringComparison.Ordinal);
                }
            }

            Assert.Equal(content.Verdict is not null, page.FindAll("details li").Count == KnownFailures.Sentences.Count);
            hasPlan |= content.Plan is not null;
            hasDecision |= content.Decision is not null;
            hasVerdict |= content.Verdict is not null;
        }

        Assert.Equal((true, true, true), (hasPlan, hasDecision, hasVerdict));
    }

    /// <summary>Names of columns stand once over a table; what stands in no cell is the page's own.</summary>
    [Fact]
    public async Task It_names_horse_reader_and_practice_at_its_head_and_at_each_foot()
    {
        Guid injury = (await CasesAsync())[0];
        ReportContent content = (await practice.Services.GetRequiredService<ListReports>().ExecuteAsync(practice.Vet, injury)).Value.Today;
        using PdfDocument paper = PdfDocument.Open(
            PaperFile.Write(
                ReportPaper.Of(new ReportView(Guid.NewGuid(), "Anwen Quill", new DateTime(2026, 3, 1, 9, 0, 0, DateTimeKind.Utc), content))
            )
        );

        Assert.StartsWith(
            Bare(content.HorseName + ReportWords.ForReader("Anwen Quill") + ReportWords.Released(content)),
            Bare(paper.GetPage(1).Text),
            StringComparison.Ordinal
        );
        string foot = string.Format(
            TextCulture.Default,
            ReferralTexts.PaperFoot,
            content.HorseName,
            Figures.Date(content.Date),
            content.PracticeName
        );
        Assert.All(paper.GetPages(), sheet => Assert.Contains(Bare(foot), Bare(sheet.Text), StringComparison.Ordinal));
        Assert.Equal(content.PracticeName, paper.Information.Author);
    }

    private async Task<IReadOnlyList<Guid>> CasesAsync()
    {
        List<Guid> cases = [];
        HorsePage horses = (
            await practice.Services.GetRequiredService<FindHorses>().ExecuteAsync(practice.Vet, new FindHorsesInput())
        ).Value;
        foreach (HorseRow row in horses.Rows)
        {
            HorseView horse = (await practice.Services.GetRequiredService<GetHorse>().ExecuteAsync(practice.Vet, row.Id)).Value;
            cases.AddRange(horse.Cases.Select(injury => injury.Id));
        }

        return cases;
    }

    private static string Bare(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
}
