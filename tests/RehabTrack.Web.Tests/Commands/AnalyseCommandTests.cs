using System.Text.Json;
using RehabTrack.Web.Commands;

namespace RehabTrack.Web.Tests.Commands;

public sealed class AnalyseCommandTests : IDisposable
{
    private const string Sheet =
        "case;part;examination_date;level_cm;ligament_area_cm2;lesion_area_cm2\n"
        + "C1;body;2026-01-10;20;1,5;0,45\n"
        + "C1;body;2026-03-10;20;1,5;9\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("rehabtrack-tests-").FullName;
    private readonly StringWriter _messages = new();

    public void Dispose()
    {
        _messages.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void A_sheet_becomes_a_json_file_with_sentences_for_what_was_rejected()
    {
        int code = Run(File("in.csv", Sheet), "--out", Path("out.json"));

        using JsonDocument document = JsonDocument.Parse(System.IO.File.ReadAllBytes(Path("out.json")));
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("2026-01-10", document.RootElement.GetProperty("asOf").GetString());
        Assert.Equal(
            "The lesion area (9 cm²) is larger than the ligament area (1.5 cm²). Check both; a decimal mark may have slipped.",
            document.RootElement.GetProperty("rejected")[0].GetProperty("reason").GetString()
        );
        Assert.Contains("Rows read: 2, taken: 1; cases analysed: 1.", _messages.ToString(), StringComparison.Ordinal);
        Assert.Equal(
            ["in.csv", "out.json"],
            Directory.EnumerateFiles(_folder).Select(System.IO.Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void What_is_read_is_never_overwritten_under_another_name_either()
    {
        string input = File("in.csv", Sheet);
        string settings = File("s.json", """{ "trend": { "targetFraction": 0.25 } }""");
        System.IO.File.CreateSymbolicLink(Path("link.csv"), input);

        Assert.Equal(ExitCodes.Refused, Run(Path("link.csv"), "--out", input));
        Assert.Equal(ExitCodes.Refused, Run(input, "--out", Path("link.csv")));
        Assert.Equal(ExitCodes.Refused, Run(input, "--out", settings, "--settings", settings));
        Assert.Equal(ExitCodes.Refused, Run(input, "--out", ""));
        Assert.Equal(Sheet, System.IO.File.ReadAllText(input));
        Assert.Contains("targetFraction", System.IO.File.ReadAllText(settings), StringComparison.Ordinal);
    }

    [Fact]
    public void Settings_and_date_are_obeyed()
    {
        int code = Run(
            File("in.csv", Sheet.Replace(";9\n", ";0,3\n", StringComparison.Ordinal)),
            "--as-of",
            "2026-02-01",
            "--settings",
            File("s.json", """{ "trend": { "targetFraction": 0.25 } }"""),
            "--out",
            Path("out.json")
        );

        using JsonDocument document = JsonDocument.Parse(System.IO.File.ReadAllBytes(Path("out.json")));
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("2026-02-01", document.RootElement.GetProperty("asOf").GetString());
        Assert.Equal(0.25, document.RootElement.GetProperty("settings").GetProperty("trend").GetProperty("targetFraction").GetDouble());
        Assert.Equal(1, document.RootElement.GetProperty("counts").GetProperty("rowsAfterAsOf").GetInt32());
    }

    [Theory]
    [InlineData("")]
    [InlineData("PK\u0003\u0004")]
    [InlineData("Patient;Datum\nAlder;10.3.2026\n")]
    public void A_file_that_cannot_be_read_as_such_ends_with_two_and_a_sentence_and_leaves_no_output(string text)
    {
        int code = Run(File("in.csv", text), "--out", Path("out.json"));

        Assert.Equal(ExitCodes.Refused, code);
        Assert.EndsWith(".", _messages.ToString().Trim(), StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFiles(_folder));
    }

    [Fact]
    public void A_setting_that_does_not_exist_ends_with_two_and_names_the_key()
    {
        int code = Run(File("in.csv", Sheet), "--out", Path("out.json"), "--settings", File("s.json", """{ "trend": { "window": 3 } }"""));

        Assert.Equal(ExitCodes.Refused, code);
        Assert.Contains("trend.window", _messages.ToString(), StringComparison.Ordinal);
        Assert.Contains("trend.windowExaminations", _messages.ToString(), StringComparison.Ordinal);
        Assert.False(System.IO.File.Exists(Path("out.json")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("in.csv")]
    [InlineData("missing.csv --out out.json")]
    [InlineData("in.csv --out")]
    [InlineData("in.csv --out out.json --out again.json")]
    [InlineData("in.csv other.csv --out out.json")]
    [InlineData("in.csv --out out.json --fast")]
    [InlineData("in.csv --out out.json --as-of 10.3.2026")]
    [InlineData("in.csv --out out.json --settings missing.json")]
    [InlineData("in.csv --out in.csv")]
    [InlineData("in.csv --out missing/folder/out.json")]
    public void A_command_line_that_cannot_be_followed_ends_with_two_and_a_sentence(string words)
    {
        File("in.csv", Sheet);
        string[] parts = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);

        int code = Run([
            .. parts.Select(part =>
                part.Contains('.', StringComparison.Ordinal) && !part.StartsWith("10", StringComparison.Ordinal) ? Path(part) : part
            ),
        ]);

        Assert.Equal(ExitCodes.Refused, code);
        Assert.NotEqual("", _messages.ToString().Trim());
        Assert.Equal(Sheet, System.IO.File.ReadAllText(Path("in.csv")));
        Assert.Single(Directory.EnumerateFiles(_folder));
    }

    [Fact]
    public void An_interrupt_leaves_nothing_behind()
    {
        using CancellationTokenSource interrupt = new();
        interrupt.Cancel();

        int code = AnalyseCommand.Run([File("in.csv", Sheet), "--out", Path("out.json")], _messages, interrupt.Token);

        Assert.Equal(ExitCodes.Interrupted, code);
        Assert.Single(Directory.EnumerateFiles(_folder));
    }

    private int Run(params string[] words) => AnalyseCommand.Run(words, _messages, CancellationToken.None);

    private string Path(string name) => System.IO.Path.Combine(_folder, name);

    private string File(string name, string text)
    {
        System.IO.File.WriteAllText(Path(name), text);
        return Path(name);
    }
}
