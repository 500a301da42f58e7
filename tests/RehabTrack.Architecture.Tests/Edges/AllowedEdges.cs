namespace RehabTrack.Architecture.Tests.Edges;

/// <summary>The one table of allowed edges, as <c>docs/architecture.md</c> gives it.</summary>
internal static class AllowedEdges
{
    public static IReadOnlyDictionary<string, IReadOnlySet<string>> OfAssemblies { get; } =
        MarkdownTable
            .Find(Repository.Read("docs/architecture.md"), "from", "may use")
            .Rows.ToDictionary(
                row => row[0],
                row =>
                    (IReadOnlySet<string>)
                        row[1]
                            .Split(',', StringSplitOptions.TrimEntries)
                            .Where(name => name != "nothing")
                            .ToHashSet(StringComparer.Ordinal),
                StringComparer.Ordinal
            );

    /// <summary>The folders of the heart, the first uses no other.</summary>
    public static IReadOnlyList<string> HeartFolders { get; } =
    [
        .. MarkdownTable
            .Find(Repository.Read("docs/architecture.md"), "order", "folder of the heart")
            .Rows.OrderBy(row => int.Parse(row[0], System.Globalization.CultureInfo.InvariantCulture))
            .Select(row => row[1]),
    ];
}
