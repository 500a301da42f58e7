using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Benchmarks.Measuring;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Benchmarks.Scenes;

/// <summary>The server's time for a case page in a practice of many horses, asked over HTTP as a browser asks.</summary>
internal sealed partial class CasePage : IScene
{
    private const int AllHorses = 10_000;
    private const int ShortHorses = 500;
    private const int Examinations = 4;
    private const int Levels = 10;
    private const int CasesAtOnce = 500;

    public string Name => "case-page";

    public async IAsyncEnumerable<Ratio> MeasureAsync(bool isShort)
    {
        int horses = isShort ? ShortHorses : AllHorses;
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rehabtrack-bench-");
        StartOptions options = new()
        {
            IsDemo = false,
            DataFolder = folder.FullName,
            FrameworkArguments = ["--urls", "http://127.0.0.1:0"],
        };
        try
        {
            await using WebApplication app = WebHost.Build(options);
            await Opening.RunAsync(app.Services, options);
            Guid[] cases = await FillAsync(app.Services, horses);
            await app.StartAsync();
            string address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
            using HttpClientHandler cookies = new() { CookieContainer = new CookieContainer() };
            using HttpClient browser = new(cookies) { BaseAddress = new Uri(address) };
            await SignInAsync(browser);
            int next = 0;
            yield return await Ratio.MeasureAsync(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"case page among {horses:N0} horses, {horses * Examinations:N0} examinations, {horses * Examinations * Levels:N0} readings"
                ),
                "a bare page of the same app (not found)",
                isShort ? 5 : 9,
                // A stride that is prime to the number of cases: every request meets another horse.
                () => ReadAsync(browser, $"/cases/{cases[next = (next + 7919) % cases.Length]}", "case-ladder"),
                20,
                () => ReadAsync(browser, "/not-found", "<main"),
                100
            );
            await app.StopAsync();
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<Guid[]> FillAsync(IServiceProvider services, int horses)
    {
        Actor vet = (await services.GetRequiredService<SignInDoor>().ListAsync())[0];
        ApplyImport import = services.GetRequiredService<ApplyImport>();
        List<Guid> cases = [];
        foreach (int[] numbers in Enumerable.Range(1, horses).Chunk(CasesAtOnce))
        {
            CaseFile[] files = [.. numbers.Select(number => MadeCases.Make(number, Examinations, Levels))];
            Outcome<ImportResult> outcome = await import.ExecuteAsync(
                vet,
                new ApplyImportInput { CommandId = Guid.CreateVersion7(), Cases = files }
            );
            cases.AddRange(outcome.Value.Cases.Select(imported => imported.CaseId));
        }

        return [.. cases];
    }

    private static async Task SignInAsync(HttpClient browser)
    {
        string page = await browser.GetStringAsync("/sign-in");
        using FormUrlEncodedContent form = new(
            Field()
                .Matches(page)
                .ToDictionary(match => match.Groups["name"].Value, match => WebUtility.HtmlDecode(match.Groups["value"].Value))
        );
        using HttpResponseMessage answer = await browser.PostAsync("/sign-in/as", form);
        answer.EnsureSuccessStatusCode();
    }

    private static async Task ReadAsync(HttpClient browser, string path, string mark)
    {
        using HttpResponseMessage answer = await browser.GetAsync(path);
        string page = await answer.Content.ReadAsStringAsync();
        if (!page.Contains(mark, StringComparison.Ordinal))
        {
            throw new InvalidOperationException($"{path} answered {(int)answer.StatusCode} without what it is asked for.");
        }
    }

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, 1000)]
    private static partial Regex Field();
}
