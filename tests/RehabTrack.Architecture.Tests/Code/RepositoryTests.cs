using System.Text.RegularExpressions;

namespace RehabTrack.Architecture.Tests.Code;

/// <summary>What must not stand anywhere in the repository.</summary>
public sealed partial class RepositoryTests
{
    /// <summary>Hosts that a file may name because a standard does.</summary>
    private static readonly string[] KnownHosts = ["www.w3.org", "schemas.microsoft.com", "schemas.openxmlformats.org"];

    private static readonly string[] Endings =
    [
        ".cs",
        ".razor",
        ".css",
        ".js",
        ".json",
        ".md",
        ".resx",
        ".csproj",
        ".props",
        ".sh",
        ".csv",
        ".txt",
        ".html",
    ];

    /// <summary>Words that mark unfinished or hidden work; put together here, so that this file does not hold them.</summary>
    private static readonly string[] Unfinished =
    [
        "TO" + "DO",
        "FIX" + "ME",
        "NotImplemented" + "Exception",
        "Thread." + "Sleep",
        "Skip" + " = \"",
    ];

    [Fact]
    public void No_file_names_a_host_on_the_network() => Expect.None(Find(line => HostsIn(line).Except(KnownHosts).Where(IsReal)));

    [Fact]
    public void No_file_names_a_folder_of_the_machine_it_was_written_on() =>
        Expect.None(Find(line => MachineFolder().Matches(line).Select(match => match.Value)));

    [Fact]
    public void No_file_marks_unfinished_work() =>
        Expect.None(Find(line => Unfinished.Where(word => line.Contains(word, StringComparison.Ordinal))));

    [Fact]
    public void A_planted_host_and_a_planted_folder_are_found()
    {
        Assert.Equal(["mirror.somewhere.net"], HostsIn("see https:" + "//mirror.somewhere.net/index").Except(KnownHosts).Where(IsReal));
        Assert.Equal([], HostsIn("see http:" + "//127.0.0.1:5080/ and https:" + "//files.example/").Except(KnownHosts).Where(IsReal));
        Assert.Matches(MachineFolder(), "read /ho" + "me/anna/notes.txt");
        Assert.DoesNotMatch(MachineFolder(), "src/wo" + "rk/home.css and /horses/wo" + "rk");
    }

    private static IEnumerable<string> Find(Func<string, IEnumerable<string>> search) =>
        Endings
            .SelectMany(ending => Repository.Files(".", ending))
            // The licence of a font is another's text.
            .Where(path => !Path.GetFileName(path).Contains("LICENSE", StringComparison.Ordinal))
            .SelectMany(path => Repository.Read(path).Split('\n').SelectMany(search).Select(found => $"{path}: {found}"));

    private static IEnumerable<string> HostsIn(string line) => Address().Matches(line).Select(match => match.Groups[1].Value);

    /// <summary>A name that somebody can own; those under .example and .test belong to nobody (RFC 2606).</summary>
    private static bool IsReal(string host) =>
        OwnedName().IsMatch(host)
        && !host.EndsWith(".example", StringComparison.Ordinal)
        && !host.EndsWith(".test", StringComparison.Ordinal);

    [GeneratedRegex(@"^[A-Za-z0-9.-]+\.[A-Za-z]{2,}$")]
    private static partial Regex OwnedName();

    [GeneratedRegex(@"https?://(\[[^\]]+\]|[^/:\s""'<>)`]+)")]
    private static partial Regex Address();

    [GeneratedRegex(@"(?<![\w./-])/(?:home|root|work|Users|mnt)/\w+|[A-Z]:\\Users")]
    private static partial Regex MachineFolder();
}
