namespace RehabTrack.Architecture.Tests;

/// <summary>A table of a Markdown page.</summary>
internal sealed record MarkdownTable(IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    /// <summary>The table whose first heading is this one.</summary>
    public static MarkdownTable Find(string page, string firstHeading, string secondHeading)
    {
        string[] lines = page.Split('\n');
        for (int line = 0; line < lines.Length; line++)
        {
            IReadOnlyList<string> headings = Cells(lines[line]);
            if (headings.Count >= 2 && headings[0] == firstHeading && headings[1] == secondHeading)
            {
                return new(headings, [.. lines.Skip(line + 2).TakeWhile(row => row.StartsWith('|')).Select(Cells)]);
            }
        }

        throw new InvalidOperationException($"The page has no table with the headings {firstHeading}, {secondHeading}.");
    }

    private static IReadOnlyList<string> Cells(string line) =>
        line.StartsWith('|') ? [.. line.Trim().Trim('|').Split('|').Select(cell => cell.Trim())] : [];
}
