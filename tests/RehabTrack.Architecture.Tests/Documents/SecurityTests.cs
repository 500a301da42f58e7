using System.Text.RegularExpressions;

namespace RehabTrack.Architecture.Tests.Documents;

/// <summary>docs/security.md says of each requirement how it is met and which test shows it; what it names has to be there.</summary>
public sealed partial class SecurityTests
{
    private const string Page = "docs/security.md";

    private static readonly string[] Headings = ["number", "what it asks for", "applies", "how", "test", "deviation"];

    [Fact]
    public void Every_requirement_stands_once_and_whoever_applies_says_how_or_why_not() => Expect.None(Wrong(Repository.Read(Page)));

    [Fact]
    public void Every_test_that_is_named_exists() => Expect.None(Missing(Repository.Read(Page), Tests()));

    [Fact]
    public void A_planted_second_row_an_empty_one_and_a_test_of_nobody_are_found()
    {
        string planted = $"""
            | {string.Join(" | ", Headings)} |
            | --- | --- | --- | --- | --- | --- |
            | 1.1.1 | a | yes | so | `No_such_test_at_all` | |
            | 1.1.1 | a | no | | | |
            | 1.1.2 | a | yes | | | |
            """;
        Assert.Equal(["1.1.1 stands twice.", "1.1.1 says neither how nor why not.", "1.1.2 says neither how nor why not."], Wrong(planted));
        Assert.Equal(["1.1.1: No_such_test_at_all"], Missing(planted, Tests()));
    }

    private static IEnumerable<string> Wrong(string page)
    {
        IReadOnlyList<IReadOnlyList<string>> rows = Rows(page);
        return rows.GroupBy(row => row[0], StringComparer.Ordinal)
            .Where(same => same.Count() > 1)
            .Select(same => $"{same.Key} stands twice.")
            .Concat(rows.Where(row => row[3].Length == 0 && row[5].Length == 0).Select(row => $"{row[0]} says neither how nor why not."));
    }

    private static IEnumerable<string> Missing(string page, HashSet<string> tests) =>
        from row in Rows(page)
        from Match named in Named().Matches(row[4])
        where !tests.Contains(named.Groups[1].Value)
        select $"{row[0]}: {named.Groups[1].Value}";

    private static HashSet<string> Tests() =>
        [
            .. Repository
                .Files("tests", ".cs")
                .SelectMany(path => Method().Matches(Repository.Read(path)))
                .Select(match => match.Groups[1].Value),
        ];

    private static IReadOnlyList<IReadOnlyList<string>> Rows(string page)
    {
        MarkdownTable table = MarkdownTable.Find(page, Headings[0], Headings[1]);
        Assert.Equal(Headings, table.Headings);
        Assert.All(table.Rows, row => Assert.Equal(Headings.Length, row.Count));
        return table.Rows;
    }

    [GeneratedRegex("`([A-Za-z0-9_]+)`")]
    private static partial Regex Named();

    [GeneratedRegex(@"public (?:async )?(?:Task|void) ([A-Z]\w*)\(")]
    private static partial Regex Method();
}
