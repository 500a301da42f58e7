using System.Globalization;
using System.Text.Json;

namespace RehabTrack.Architecture.Tests.Tables;

public sealed class ReferenceTableTests
{
    public static TheoryData<string> TableNames =>
        [.. Repository.Files("shared", ".json").Select(path => path["shared/".Length..^".json".Length])];

    [Theory]
    [MemberData(nameof(TableNames))]
    public void The_page_of_a_table_lists_every_row_as_the_file_has_it(string name)
    {
        using JsonDocument file = JsonDocument.Parse(Repository.Read($"shared/{name}.json"));
        string page = Repository.Read($"shared/{name}.md");
        JsonElement[] rows = [.. file.RootElement.GetProperty("rows").EnumerateArray()];
        string[] columns = [.. rows[0].EnumerateObject().Select(cell => cell.Name)];
        MarkdownTable listed = MarkdownTable.Find(page, columns[0], columns[1]);

        Assert.Equal(columns, listed.Headings);
        Assert.Equal(
            rows.Select(row => string.Join(" | ", row.EnumerateObject().Select(TextOf))),
            listed.Rows.Select(row => string.Join(" | ", row))
        );
        Assert.Contains(
            string.Create(
                CultureInfo.InvariantCulture,
                $"File: `{Path.GetFileName(name)}.json`, version {file.RootElement.GetProperty("version").GetInt32()}, {rows.Length} rows."
            ),
            page,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [MemberData(nameof(TableNames))]
    public void Every_row_of_a_table_has_a_source(string name)
    {
        using JsonDocument file = JsonDocument.Parse(Repository.Read($"shared/{name}.json"));

        Assert.Equal(name, file.RootElement.GetProperty("table").GetString());
        Assert.All(
            file.RootElement.GetProperty("rows").EnumerateArray(),
            row => Assert.False(string.IsNullOrWhiteSpace(row.GetProperty("source").GetString()))
        );
    }

    private static string TextOf(JsonProperty cell) =>
        cell.Value.ValueKind == JsonValueKind.String ? cell.Value.GetString()! : TrimmedNumber(cell.Value.GetRawText());

    private static string TrimmedNumber(string raw) =>
        raw.Contains('.', StringComparison.Ordinal) ? raw : raw.ToString(CultureInfo.InvariantCulture);
}
