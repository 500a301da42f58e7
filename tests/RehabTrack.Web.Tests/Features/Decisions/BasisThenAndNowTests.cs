using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Healing;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Room;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

public sealed class BasisThenAndNowTests(EmptyPractice practice) : IClassFixture<EmptyPractice>
{
    [Fact]
    public async Task When_what_a_decision_rested_on_changed_the_page_lays_then_beside_now()
    {
        HorseInRehab horse = await DecidedAsync("Rested");
        await using BunitContext tab = practice.Tab();
        Assert.Empty(Open(tab, horse).FindAll(".basis"));
        PracticeView at = (await practice.Services.GetRequiredService<GetPractice>().ExecuteAsync(practice.Vet, NoInput.Value)).Value;
        await practice
            .Services.GetRequiredService<ChangePractice>()
            .ExecuteAsync(
                practice.Vet,
                ChangePracticeInput.Of(at, Guid.NewGuid()) with
                {
                    Settings = at.Settings with { Error = at.Settings.Error with { LesionAreaCv = 0.2 } },
                }
            );

        IElement basis = Open(tab, horse).Find(".basis");

        Assert.Contains(
            basis.QuerySelectorAll(".changes li"),
            said =>
                said.TextContent.StartsWith("A setting was changed.", StringComparison.Ordinal)
                && said.TextContent.EndsWith($"today {Figures.Number(0.2, "0.####")}.", StringComparison.Ordinal)
        );
        Assert.Equal(
            [$"Then, {Figures.Date(HorseInRehab.Today)}", SignedFiguresTexts.ColumnToday],
            basis.QuerySelectorAll("thead th").Skip(1).Take(2).Select(cell => cell.TextContent)
        );
    }

    [Fact]
    public async Task A_decision_of_before_figures_were_kept_tells_verdict_and_rate_and_an_unknown_case_is_told_as_such()
    {
        HorseInRehab horse = await DecidedAsync("Older");
        DecisionView kept = (await horse.ViewAsync()).Decisions[0];
        CaseView injury = (await practice.Services.GetRequiredService<GetCase>().ExecuteAsync(practice.Vet, horse.Case)).Value;
        CaseGround old = kept.Ground.Cases[0] with { Figures = null, Verdict = Verdict.Healing, RatePercentPer60Days = -12 };
        await using BunitContext tab = practice.Tab();

        string older = Told(tab, kept with { Ground = kept.Ground with { Cases = [old] } }, injury);
        string unknown = Told(tab, kept with { Ground = kept.Ground with { Cases = [] } }, injury);

        Assert.Contains(
            $"Then: {Names.Of(Verdict.Healing)}, {Figures.SignedPercent(-12)} per 60 days. Now: {Names.Of(Verdict.NotYetReadable)}.",
            older,
            StringComparison.Ordinal
        );
        Assert.Contains("did not know of this case", unknown, StringComparison.Ordinal);
    }

    private static string Told(BunitContext tab, DecisionView decision, CaseView injury) =>
        tab.Render<BasisThenAndNow>(one => one.Add(basis => basis.Decision, decision).Add(basis => basis.Cases, [OpenCaseToday.Of(injury)]))
            .Find(".basis-case")
            .TextContent;

    private static IRenderedComponent<DecisionSheet> Open(BunitContext tab, HorseInRehab horse) =>
        tab.Render<DecisionSheet>(page => page.Add(one => one.Id, horse.Id));

    private async Task<HorseInRehab> DecidedAsync(string name)
    {
        HorseInRehab horse = await HorseInRehab.BuildAsync(practice, name);
        await horse.SignAsync(HorseInRehab.Plan);
        await horse.DecideAsync(DecisionKind.Hold, disagreement: "it goes well");
        return horse;
    }
}
