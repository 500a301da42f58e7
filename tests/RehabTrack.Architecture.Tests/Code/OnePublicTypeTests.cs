using System.Text.RegularExpressions;

namespace RehabTrack.Architecture.Tests.Code;

public sealed partial class OnePublicTypeTests
{
    [Fact]
    public void A_source_file_holds_one_public_type_and_is_named_after_it() =>
        Expect.None(
            Repository
                .Files("src", ".cs")
                .Where(path => !path.Contains("/Migrations/", StringComparison.Ordinal))
                .SelectMany(path => Violations(path, Repository.Read(path)))
        );

    [Fact]
    public void A_second_public_type_is_found() =>
        Assert.Equal(
            ["src/Horse.cs: Horse, Saddle"],
            Violations("src/Horse.cs", "namespace A;\n\npublic sealed record Horse;\n\npublic enum Saddle\n{\n}\n")
        );

    [Fact]
    public void A_file_named_otherwise_is_found() =>
        Assert.Equal(
            ["src/Horse.cs: Saddle"],
            Violations("src/Horse.cs", "namespace A;\n\npublic readonly record struct Saddle(int X);\n")
        );

    [Fact]
    public void Private_helpers_and_generic_types_are_allowed() =>
        Expect.None(
            Violations(
                "src/Horse.cs",
                "namespace A;\n\npublic sealed class Horse<T>\n{\n    public enum Gait { }\n}\n\ninternal sealed class Foal;\n"
            )
        );

    private static IEnumerable<string> Violations(string path, string source)
    {
        string[] types = [.. PublicType().Matches(source).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal)];
        string expected = Path.GetFileName(path).Split('.')[0];
        return types.Length == 0 || (types.Length == 1 && types[0] == expected) ? [] : [$"{path}: {string.Join(", ", types)}"];
    }

    [GeneratedRegex(
        @"^public (?:(?:sealed|static|abstract|partial|readonly|ref|unsafe) )*(?:record struct|record class|record|class|struct|interface|enum|delegate \S+) (\w+)",
        RegexOptions.Multiline
    )]
    private static partial Regex PublicType();
}
