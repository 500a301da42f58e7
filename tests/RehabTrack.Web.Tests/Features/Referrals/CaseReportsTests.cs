using Bunit;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Rights;
using RehabTrack.Web.Features.Referrals;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Referrals;

/// <summary>The page on which a vet releases a report.</summary>
public sealed class CaseReportsTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    private readonly ShareHouse _house = new(practice.Services, practice.Vet);

    [Fact]
    public async Task A_vet_releases_a_report_with_words_and_is_offered_a_link_for_it()
    {
        (Guid injury, Guid reader) = await CaseAsync("Wild Thyme");
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<CaseReports> page = tab.Render<CaseReports>(given => given.Add(one => one.Id, injury));
        page.WaitForElement("#words").Change("Seen with thanks.");

        page.Find(".form-foot .btn").Click();
        page.WaitForAssertion(() => Assert.Contains(ReferralTexts.ReleasedNow, page.Markup, StringComparison.Ordinal));

        ReportView kept = Assert.Single((await _house.AskAsync<ListReports, Guid, CaseReportsView>(injury)).Released);
        Assert.Equal(("Seen with thanks.", "Anwen of Wild Thyme"), (kept.Content.Words, kept.Reader));
        page.WaitForAssertion(() =>
            Assert.Contains(ShareTexts.NoLink, page.Find("section[aria-labelledby=links]").TextContent, StringComparison.Ordinal)
        );
        Assert.NotEqual(Guid.Empty, reader);
    }

    [Fact]
    public async Task A_case_without_a_signed_examination_says_so()
    {
        Guid reader = await _house.PersonAsync("Anwen of Larkspur", Role.ReferringVet);
        Guid horse = await _house.HorseAsync("Larkspur", null, null, reader);
        Guid injury = (await _house.AskAsync<GetHorse, Guid, HorseView>(horse)).Cases[0].Id;
        await using BunitContext tab = practice.Tab();
        IRenderedComponent<CaseReports> page = tab.Render<CaseReports>(given => given.Add(one => one.Id, injury));

        page.WaitForElement(".form-foot .btn").Click();

        page.WaitForAssertion(() =>
            Assert.Contains(
                ProblemSentences.Of(new Rechecks.Quantities.Problem("case", "report-without-examination")),
                page.Markup,
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public async Task A_vet_who_does_not_stand_for_the_horse_is_told_before_typing_anything()
    {
        (Guid injury, _) = await CaseAsync("Marsh Tansy");
        Guid other = await _house.PersonAsync("Sorrel Dunn", Role.Vet, canSignIn: true);
        await using BunitContext tab = practice.Tab(new Actor(practice.Vet.PracticeId, other, Role.Vet, "Sorrel Dunn"));
        IRenderedComponent<CaseReports> page = tab.Render<CaseReports>(given => given.Add(one => one.Id, injury));

        page.WaitForAssertion(() =>
            Assert.Contains(practice.Vet.Name, page.Find("section .notice.amber").TextContent, StringComparison.Ordinal)
        );
        Assert.Empty(page.FindAll("#words"));
    }

    [Fact]
    public async Task An_assistant_reads_and_releases_nothing()
    {
        (Guid injury, _) = await CaseAsync("Bay Laurel");
        await using BunitContext tab = practice.Tab(await practice.AssistantAsync());
        IRenderedComponent<CaseReports> page = tab.Render<CaseReports>(given => given.Add(one => one.Id, injury));

        page.WaitForAssertion(() => Assert.Contains(ReferralTexts.VetOnly, page.Markup, StringComparison.Ordinal));
        Assert.Empty(page.FindAll("#words"));
    }

    private async Task<(Guid Case, Guid Reader)> CaseAsync(string name)
    {
        Guid reader = await _house.PersonAsync($"Anwen of {name}", Role.ReferringVet);
        Guid horse = await _house.HorseAsync(name, null, null, reader);
        return (await _house.SignedCaseAsync(horse), reader);
    }
}
