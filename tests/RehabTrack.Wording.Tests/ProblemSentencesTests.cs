using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording.Tests;

public sealed partial class ProblemSentencesTests
{
    public static TheoryData<string> Codes
    {
        get
        {
            // The manager keeps this set and hands it to everyone: it must not be disposed.
            ResourceSet texts = Problems.ResourceManager.GetResourceSet(CultureInfo.InvariantCulture, true, true)!;
            return [.. texts.Cast<DictionaryEntry>().Select(entry => ((string)entry.Key).Replace('_', '-')).Order(StringComparer.Ordinal)];
        }
    }

    /// <summary>Every text of words joined by hyphens in the rooms that make problems of readings and files, but for names of tables.</summary>
    public static TheoryData<string> CodesInSource =>
        [
            .. new[] { "RehabTrack.Exchange", "RehabTrack.Rechecks/Exams", "RehabTrack.Rechecks/Exercise", "RehabTrack.Rechecks/Permits" }
                .SelectMany(room => Directory.EnumerateFiles(RepositoryFolder.Of("src", room), "*.cs", SearchOption.AllDirectories))
                .Where(path => !path.Contains("/obj/", StringComparison.Ordinal))
                .SelectMany(path => Code().Matches(File.ReadAllText(path)))
                .Select(match => match.Groups["code"].Value)
                .Except(["setting-ranges", "column-synonyms", "small-paddock"], StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Every_sentence_fills_in_and_ends_as_one(string code)
    {
        string sentence = ProblemSentences.Of(new Problem("field", code, "one", "two", "three", "four"));

        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("!", sentence, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\{[0-9]", sentence);
    }

    [Theory]
    [MemberData(nameof(CodesInSource))]
    public void Every_code_that_files_and_readings_use_has_a_text(string code) => Assert.True(ProblemSentences.Has(code), code);

    [Theory]
    [InlineData("area-zero")]
    [InlineData("area-negative")]
    [InlineData("area-too-large")]
    [InlineData("length-zero")]
    [InlineData("length-negative")]
    [InlineData("length-too-large")]
    public void The_codes_that_are_put_together_have_a_text(string code) => Assert.True(ProblemSentences.Has(code), code);

    [Fact]
    public void A_text_that_wants_more_than_the_problem_gives_reads_with_a_gap() =>
        Assert.StartsWith(
            "“x” is not known here.",
            ProblemSentences.Of(new Problem("part", "unknown-word", "x")),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_code_without_a_text_is_named() =>
        Assert.Contains("no-such-code", ProblemSentences.Of(new Problem("", "no-such-code")), StringComparison.Ordinal);

    [GeneratedRegex("\"(?<code>[a-z]+(-[a-z0-9]+)+)\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Code();
}
