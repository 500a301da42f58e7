using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace RehabTrack.Browser.Tests.EveryPage;

/// <summary>
/// Asks axe-core for what keeps people out of a page. The script is run in the page itself and answers with the violations alone: the
/// package's own way brings the whole report across, and takes several times as long as the page.
/// </summary>
internal static class Barriers
{
    private const string Run = """
        async rules => {
            const report = await axe.run(document, { resultTypes: ['violations'], ...(rules ? { runOnly: { type: 'rule', values: rules } } : {}) });
            return report.violations
                .filter(violation => ['serious', 'critical'].includes(violation.impact))
                .flatMap(violation => violation.nodes.map(node => `${violation.id}: ${violation.help}: ${node.html}`));
        }
        """;

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>All barriers that are serious or critical.</summary>
    public static Task<string[]> OnAsync(IPage page) => AskAsync(page, null);

    /// <summary>Those of colour alone: light and dark pages differ in nothing else.</summary>
    public static Task<string[]> OfColourOnAsync(IPage page) => AskAsync(page, ["color-contrast"]);

    private static async Task<string[]> AskAsync(IPage page, string[]? rules)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Script);
        }

        return await page.EvaluateAsync<string[]>(Run, rules);
    }
}
