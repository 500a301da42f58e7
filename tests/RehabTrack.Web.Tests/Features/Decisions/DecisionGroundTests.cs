using AngleSharp.Dom;
using Bunit;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Web.Features.Decisions;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Decisions;

/// <summary>What the page of a decision says of a horse whose history is known: the demo's Tansy Fathom.</summary>
public sealed class DecisionGroundTests(DemoPracticeAtHand demo) : IClassFixture<DemoPracticeAtHand>
{
    [Fact]
    public async Task The_open_case_stands_with_its_verdict_and_the_figures_it_rests_on()
    {
        (ExerciseView view, IRenderedComponent<DecisionSheet> page, BunitContext tab) = await OpenAsync();
        await using BunitContext closing = tab;

        IElement open = Assert.Single(page.FindAll(".case-today"));
        Assert.Equal($"/cases/{view.Horse.Cases.Single(row => row.IsOpen).Id}", open.QuerySelector("a.name")!.GetAttribute("href"));
        Assert.Contains("No progress", open.TextContent, StringComparison.Ordinal);
        Assert.Matches(@"\d+ %|\d+ days|\d+ examinations", open.QuerySelector(".soft")!.TextContent);
        Assert.NotEmpty(open.QuerySelectorAll(".findings li"));
    }

    [Fact]
    public async Task Since_the_last_signature_tells_every_line_and_counts_plain_logs()
    {
        (ExerciseView view, IRenderedComponent<DecisionSheet> page, BunitContext tab) = await OpenAsync();
        await using BunitContext closing = tab;
        ExerciseLine last = SinceWords.Last(view)!;
        int plain = view
            .Lines.Where(line => line.Number > last.Number && SinceWords.IsPlainLog(line))
            .Select(line => line.Date)
            .Distinct()
            .Count();

        string told = page.Find("section[aria-labelledby=since]").TextContent;

        Assert.Contains(Figures.Date(last.Date), told, StringComparison.Ordinal);
        Assert.True(plain > 1, "The demo logs days after its last decision.");
        Assert.Contains($"{plain} days were logged without a sign.", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Done_stands_beside_permitted_for_each_of_the_last_weeks_latest_first()
    {
        (ExerciseView view, IRenderedComponent<DecisionSheet> page, BunitContext tab) = await OpenAsync();
        await using BunitContext closing = tab;
        DateOnly today = view.Practice.Today;
        DateOnly monday = today.AddDays(-((int)today.DayOfWeek + 6) % 7).AddDays(-56);
        IReadOnlyList<WeekAdherence> weeks = AdherenceReader.ByWeek(view.Logs, view.Permitted(monday, today), monday, today);

        IElement[] rows = [.. page.FindAll("section[aria-labelledby=adherence] tbody tr")];

        Assert.Equal(
            weeks.Reverse().Select(week => Figures.ShortDate(week.From)),
            rows.Select(row => row.QuerySelector("th")!.TextContent)
        );
        Assert.Equal(
            weeks.Reverse().Select(week => $"{week.Done.Total} of {week.PermittedMinutes}"),
            rows.Select(row => row.QuerySelectorAll("td")[1].TextContent)
        );
        Assert.Contains(rows, row => row.QuerySelector(".mark.good") is not null);
    }

    [Fact]
    public async Task The_next_gate_stands_with_its_words_its_rules_and_what_the_step_up_needs()
    {
        (ExerciseView view, IRenderedComponent<DecisionSheet> page, BunitContext tab) = await OpenAsync();
        await using BunitContext closing = tab;
        GateAhead ahead = GateAhead.Of(view)!;

        IElement gate = page.Find(".next-gate");

        Assert.Contains(ahead.When, gate.TextContent, StringComparison.Ordinal);
        Assert.Equal(Names.AsTitle(ahead.Gate.Criteria), gate.QuerySelector(".gate-words")!.TextContent);
        IElement[] rules = [.. gate.QuerySelectorAll(".gate-rules li")];
        Assert.Equal(ahead.Gate.Rules.Count, rules.Length);
        Assert.All(rules, rule => Assert.Equal(("unmet", "not met:"), (rule.ClassName, rule.QuerySelector("strong")!.TextContent)));
        Assert.NotEmpty(gate.QuerySelectorAll(".needs:not(.gate-rules) li"));
        Assert.Empty(page.FindAll(".case-suggestion .needs"));
    }

    [Fact]
    public async Task Every_past_decision_tells_its_parameters_its_answers_and_the_rules_with_their_figures()
    {
        (ExerciseView view, IRenderedComponent<DecisionSheet> page, BunitContext tab) = await OpenAsync();
        await using BunitContext closing = tab;

        IElement[] past = [.. page.FindAll(".past")];

        Assert.Equal(view.Decisions.Count, past.Length);
        Assert.All(past, one => Assert.StartsWith("Signed: from ", one.QuerySelector(".params")!.TextContent, StringComparison.Ordinal));
        Assert.All(past, one => Assert.Equal(DecisionPage.AnsweredNothing, one.QuerySelector(".answers")!.TextContent));
        Assert.All(past, one => Assert.NotEmpty(one.QuerySelectorAll(".then li")));
    }

    private async Task<(ExerciseView View, IRenderedComponent<DecisionSheet> Page, BunitContext Tab)> OpenAsync()
    {
        ExerciseView view = await DemoHorse.ViewAsync(demo, "Tansy Fathom");
        BunitContext tab = demo.Tab();
        return (view, tab.Render<DecisionSheet>(one => one.Add(sheet => sheet.Id, view.Horse.Id)), tab);
    }
}
