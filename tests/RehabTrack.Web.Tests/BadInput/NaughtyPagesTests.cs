using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Naughty;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Web.Tests.Hosting;
using RehabTrack.Web.Tests.Shared;

namespace RehabTrack.Web.Tests.BadInput;

/// <summary>Text that has broken other pages, as names of horses behind a link and as every word on the pages of the practice, read as a browser reads it.</summary>
public sealed partial class NaughtyPagesTests(RunningApp app) : IClassFixture<RunningApp>
{
    private const int AYard = 100;

    /// <summary>What a list has when it goes on on another page.</summary>
    private static readonly string[] LongList = ["nav[class]", "a[rel]"];

    [Fact]
    public async Task It_stands_on_a_page_as_text_and_plants_nothing()
    {
        ShareHouse house = new(app.Services, app.Vet);
        HashSet<string> usual = Kinds(await PageOfAsync(house, ["Quiet Grey"], []));
        List<string> names = [];
        foreach (string[] some in NaughtyStrings.All.Where(text => text.Any(letter => "<>\"'&{`".Contains(letter))).Chunk(AYard))
        {
            List<string> taken = [];
            IHtmlDocument page = await PageOfAsync(house, some, taken);

            Assert.Empty(Kinds(page).Except(usual, StringComparer.Ordinal));
            string shown = Bare(page.Body!.TextContent);
            // What steers a terminal has no shape in HTML.
            Assert.DoesNotContain(taken, name => !name.Any(char.IsControl) && !shown.Contains(Bare(name), StringComparison.Ordinal));
            names.AddRange(taken);
        }

        Assert.InRange(names.Count, 250, int.MaxValue);
    }

    /// <summary>
    /// Every word of a horse, its people, its yard, its case, an examination, a visit, a call, a concern and a report is one of them, as far as it
    /// is taken.
    /// </summary>
    [Fact]
    public async Task Every_page_of_the_practice_shows_it_as_text_and_grows_nothing_that_it_does_not_have_with_quiet_words()
    {
        ShareHouse house = new(app.Services, app.Vet);
        using HttpClient vet = await app.BrowserAsync(app.Vet);
        Dictionary<string, HashSet<string>> usual = [];
        foreach ((string page, string address) in await NaughtyHorse.PagesAsync(app, house, "Quiet words"))
        {
            usual.Add(page, Kinds(await ReadAsync(vet, address)));
        }

        int shown = 0;
        foreach (string pack in NaughtyStrings.Packs.Where(pack => pack.Length <= 200 && pack.Contains('<', StringComparison.Ordinal)))
        {
            foreach ((string page, string address) in await NaughtyHorse.PagesAsync(app, house, pack))
            {
                IHtmlDocument read = await ReadAsync(vet, address);

                Assert.Empty(Kinds(read).Except([.. usual[page], .. LongList], StringComparer.Ordinal).Select(kind => $"{page}: {kind}"));
                Assert.Null(
                    read.QuerySelector("[id=planted], [onerror], [onload], [onclick], [href^='javascript:' i], [src^='javascript:' i]")
                );
                shown += read.DocumentElement.TextContent.Contains("planted", StringComparison.Ordinal) ? 1 : 0;
            }
        }

        Assert.InRange(shown, usual.Count / 2, int.MaxValue);
    }

    private static async Task<IHtmlDocument> ReadAsync(HttpClient browser, string address)
    {
        using HttpResponseMessage answer = await browser.GetAsync(address);
        Assert.Equal((address, HttpStatusCode.OK), (address, answer.StatusCode));
        return new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync());
    }

    /// <summary>The page behind the link of a trainer who has horses of these names, but for those that are refused.</summary>
    private async Task<IHtmlDocument> PageOfAsync(ShareHouse house, IEnumerable<string> names, List<string> taken)
    {
        Guid trainer = await house.PersonAsync("Tom Alder", Role.Trainer);
        foreach (string name in names)
        {
            if (await AddAsync(house, name, trainer))
            {
                taken.Add(name);
            }
        }

        using HttpClient browser = app.Browser();
        return await ReadAsync(browser, (await house.LinkAsync(trainer, HorseRelation.Trainer, null)).Path);
    }

    /// <summary>A horse with an open case; false when the name is refused.</summary>
    private async Task<bool> AddAsync(ShareHouse house, string name, Guid trainer)
    {
        Outcome<Saved> saved = await app
            .Services.GetRequiredService<SaveHorse>()
            .ExecuteAsync(
                app.Vet,
                new SaveHorseInput
                {
                    CommandId = Guid.NewGuid(),
                    Name = name,
                    TrainerId = trainer,
                }
            );
        if (!saved.Succeeded)
        {
            return false;
        }

        await house.AskAsync<OpenCase, OpenCaseInput, Saved>(
            new OpenCaseInput
            {
                CommandId = Guid.NewGuid(),
                HorseId = saved.Value.Id,
                Limb = Limb.LeftHind,
                Structure = Structure.SuspensoryLigament,
            }
        );
        return true;
    }

    /// <summary>Every kind of element with every attribute that it has somewhere on the page.</summary>
    private static HashSet<string> Kinds(IHtmlDocument page) =>
        page
            .All.SelectMany(element =>
                element.Attributes.Select(attribute => $"{element.LocalName}[{attribute.Name}]").Append(element.LocalName)
            )
            .ToHashSet(StringComparer.Ordinal);

    private static string Bare(string text) => Spaces().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+", RegexOptions.None, 1000)]
    private static partial Regex Spaces();
}
