using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Exchange;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Room;
using RehabTrack.Web.Commands;
using RehabTrack.Web.Features.Cases;
using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.BadInput;

/// <summary>Through the command and through the case page: a sensible answer or a clear reason, never a number that is none.</summary>
public sealed partial class BadInputTests(EmptyPractice practice) : IClassFixture<EmptyPractice>, IDisposable
{
    private static readonly string[] NoNumbers = ["NaN", "Infinity", "∞"];

    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-tests-").FullName;

    public static TheoryData<string> Names => [.. BadSheets.All.Keys];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_command_answers_with_json_that_can_be_read(string name)
    {
        string input = Path.Combine(_folder, "in.csv");
        string output = Path.Combine(_folder, "out.json");
        File.WriteAllText(input, BadSheets.All[name]);
        using StringWriter messages = new();

        int code = AnalyseCommand.Run([input, "--out", output], messages, CancellationToken.None);

        Assert.Equal(ExitCodes.Done, code);
        string text = File.ReadAllText(output);
        Assert.DoesNotContain(NoNumbers, number => text.Contains(number, StringComparison.Ordinal));
        using JsonDocument document = JsonDocument.Parse(text);
        JsonElement[] refused = [.. document.RootElement.GetProperty("rejected").EnumerateArray()];
        Assert.Equal(BadSheets.Refused.ContainsKey(name), refused.Length > 0);
        if (BadSheets.Refused.TryGetValue(name, out (string Column, string Reason) expected))
        {
            Assert.Equal(expected.Column, refused[0].GetProperty("column").GetString());
            Assert.StartsWith(expected.Reason, refused[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        }

        JsonElement injury = Assert.Single(document.RootElement.GetProperty("cases").EnumerateArray());
        Assert.NotEmpty(injury.GetProperty("trend").GetProperty("verdict").GetString()!);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_case_page_says_something_sensible(string name)
    {
        Guid id = await ImportAsync(name);
        await using BunitContext tab = practice.Tab();
        string address = $"/cases/{id}?why=1";
        tab.Services.GetRequiredService<NavigationManager>().NavigateTo(address);

        IRenderedComponent<CaseSheet> page = tab.Render<CaseSheet>(one => one.Add(sheet => sheet.Id, id));

        IEnumerable<string> texts = page.FindAll("*").SelectMany(element => element.ChildNodes.OfType<IText>()).Select(text => text.Text);
        Assert.DoesNotContain(NoNumbers, number => page.Markup.Contains(number, StringComparison.Ordinal));
        // Nor a figure that nobody can read.
        Assert.DoesNotContain(texts, text => LongNumber().IsMatch(text));
        Assert.EndsWith(".", page.Find(".verdict .say").TextContent.Trim(), StringComparison.Ordinal);
        Assert.NotEmpty(page.FindAll(".case-ladder [data-track]"));
    }

    [GeneratedRegex(@"\d{7,}", RegexOptions.None, 1000)]
    private static partial Regex LongNumber();

    private async Task<Guid> ImportAsync(string name)
    {
        // Each sheet is a case of a horse of its own.
        string sheet = BadSheets.All[name].Replace("Odd", $"Odd {name}", StringComparison.Ordinal);
        using MemoryStream stream = new(Encoding.UTF8.GetBytes(sheet));
        SheetResult read = SheetImport.Read(stream, DateOnly.FromDateTime(KeptPractice.Morning.DateTime));
        Outcome<ImportResult> imported = await practice
            .Services.GetRequiredService<ApplyImport>()
            .ExecuteAsync(practice.Vet, new ApplyImportInput { CommandId = Guid.CreateVersion7(), Cases = read.Cases });
        return imported.Value.Cases[0].CaseId;
    }
}
