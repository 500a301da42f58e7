using System.Text.RegularExpressions;
using RehabTrack.Records.Room;
using RehabTrack.Wording;

namespace RehabTrack.Records.Tests.Room;

/// <summary>Every problem that keeping records can answer has a sentence.</summary>
public sealed partial class ProblemTextTests
{
    [Fact]
    public void Every_code_in_the_sources_has_a_text()
    {
        string source = Path.Combine(Path.GetDirectoryName(House.Files.Seed)!, "src", "RehabTrack.Records");
        string[] codes =
        [
            .. Directory
                .EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                .SelectMany(file => Codes().Matches(File.ReadAllText(file)).Select(match => match.Groups["code"].Value))
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

        Assert.Contains("not-confirmed", codes);
        Assert.True(ProblemSentences.Has(ChangedMeanwhile.Code), ChangedMeanwhile.Code);
        Assert.True(codes.Length > 30);
        Assert.All(codes, code => Assert.True(ProblemSentences.Has(code), code));
    }

    /// <summary>A code is the second text of a problem, or the second argument of a check that makes one.</summary>
    [GeneratedRegex(
        """"(?:Problem|new|Wrong)\s*\(\s*(?:\$?"[^"]*"|[A-Za-z][\w.]*(?:\([^()]*(?:\([^()]*\)[^()]*)*\))?)\s*,\s*"(?<code>[a-z]+(?:-[a-z]+)+)\x22"""",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 5000
    )]
    private static partial Regex Codes();
}
