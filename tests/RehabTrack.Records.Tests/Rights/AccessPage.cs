using System.Reflection;
using System.Runtime.CompilerServices;
using RehabTrack.Architecture.Tests;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Start;

namespace RehabTrack.Records.Tests.Rights;

/// <summary><c>docs/access.md</c>, and the same tables as the code has them.</summary>
internal static class AccessPage
{
    private static readonly (Role Role, string Heading)[] Columns =
    [
        (Role.Administrator, "administrator"),
        (Role.Vet, "vet"),
        (Role.Assistant, "assistant"),
        (Role.Trainer, "trainer"),
        (Role.Owner, "owner"),
        (Role.ReferringVet, "referring vet"),
    ];

    public static string Text { get; } = Repository.Read("docs/access.md");

    public static IReadOnlyList<Role> Roles { get; } = [.. Columns.Select(column => column.Role)];

    public static IEnumerable<Right> AllRights => Enum.GetValues<Right>();

    /// <summary>How far each right reaches, as the page says it: "right, role: reach".</summary>
    public static IEnumerable<string> Reaches(string page) =>
        Cells(MarkdownTable.Find(page, "right", "opens"), 2).Select(cell => $"{cell.Row[0].Trim('`')}, {cell.Heading}: {cell.Text}");

    /// <summary>The same, as the code has it.</summary>
    public static IEnumerable<string> ReachesOfCode() =>
        from right in AllRights
        from column in Columns
        select $"{right}, {column.Heading}: {NameOf(RightsTable.ReachOf(column.Role, right))}";

    /// <summary>Which use cases ask for each right, as the page says it: "right: use case".</summary>
    public static IEnumerable<string> UseCases(string page) =>
        MarkdownTable
            .Find(page, "right", "use cases")
            .Rows.SelectMany(row =>
                row[1]
                    .Split(',', StringSplitOptions.TrimEntries)
                    .Where(name => name != "none")
                    .Select(name => $"{row[0].Trim('`')}: {name.Trim('`')}")
            );

    /// <summary>The rights of that table, whether anything asks for them or not.</summary>
    public static IEnumerable<string> RightsWithUseCases(string page) =>
        MarkdownTable.Find(page, "right", "use cases").Rows.Select(row => row[0].Trim('`'));

    /// <summary>The same, as the code has it.</summary>
    public static IEnumerable<string> UseCasesOfCode() => RecordsServices.UseCases().Select(type => $"{RightOf(type)}: {type.Name}");

    /// <summary>Which fields those of a role read, as the page says it: "what, field, role: reads".</summary>
    public static IEnumerable<string> Fields(string page) =>
        Cells(MarkdownTable.Find(page, "what is read", "field"), 2)
            .Select(cell => $"{cell.Row[0]}, {cell.Row[1].Trim('`')}, {cell.Heading}: {cell.Text}");

    /// <summary>A line of that table, as a test found it.</summary>
    public static string Field(string what, string field, Role role, bool reads) =>
        $"{what}, {field}, {Columns.Single(column => column.Role == role).Heading}: {(reads ? "reads" : "no")}";

    /// <summary>The right a use case asks the gate for. It is said without anything the use case holds.</summary>
    public static Right RightOf(Type useCase) =>
        (Right)
            useCase
                .GetProperty("Right", BindingFlags.Instance | BindingFlags.NonPublic)!
                .GetValue(RuntimeHelpers.GetUninitializedObject(useCase))!;

    private static IEnumerable<(IReadOnlyList<string> Row, string Heading, string Text)> Cells(MarkdownTable table, int first)
    {
        Assert.Equal(Columns.Select(column => column.Heading), table.Headings.Skip(first));
        return table.Rows.SelectMany(row => table.Headings.Index().Skip(first).Select(heading => (row, heading.Item, row[heading.Index])));
    }

    private static string NameOf(Reach reach) =>
        reach switch
        {
            Reach.None => "no",
            Reach.OwnHorses => "own horses",
            Reach.Practice => "practice",
        };
}
