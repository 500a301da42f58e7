using System.Text.RegularExpressions;

namespace RehabTrack.Architecture.Tests.Documents;

public sealed partial class LinkTests
{
    [Fact]
    public void Every_link_and_picture_of_a_document_leads_to_a_file() =>
        Expect.None(Repository.Files(".", ".md").SelectMany(path => Broken(path, Repository.Read(path))));

    [Fact]
    public void Every_path_of_the_project_that_a_document_names_exists() =>
        Expect.None(Repository.Files(".", ".md").SelectMany(path => Missing(path, Repository.Read(path))));

    [Fact]
    public void A_planted_broken_link_and_path_are_found()
    {
        Assert.Equal(["docs/a.md: nowhere.md"], Broken("docs/a.md", "see [this](nowhere.md#part) and [that](../README.md)"));
        Assert.Equal(["docs/a.md: src/Nothing"], Missing("docs/a.md", "in `src/Nothing` and `src/RehabTrack.Web/Features/<page>/`"));
    }

    private static IEnumerable<string> Broken(string path, string text) =>
        Link()
            .Matches(text)
            .Select(match => match.Groups[1].Value.Split('#')[0])
            .Where(target => target.Length > 0 && !target.Contains(':', StringComparison.Ordinal))
            .Where(target => !Exists(Path.Combine(Path.GetDirectoryName(path)!, target)))
            .Select(target => $"{path}: {target}");

    private static IEnumerable<string> Missing(string path, string text) =>
        NamedPath()
            .Matches(text)
            .Select(match => match.Groups[1].Value.TrimEnd('/'))
            .Where(target => !target.Contains('<', StringComparison.Ordinal) && !target.Contains('*', StringComparison.Ordinal))
            // What the gallery makes is not kept.
            .Where(target => target != "docs/pictures/all" && !Exists(target))
            .Select(target => $"{path}: {target}");

    private static bool Exists(string path) => Path.Exists(RepositoryFolder.Of(path));

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex("`((?:src|tests|shared|docs|seed|scripts)/[^`\\s]+)`")]
    private static partial Regex NamedPath();
}
