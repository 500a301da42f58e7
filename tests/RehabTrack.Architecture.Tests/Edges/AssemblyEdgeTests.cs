using System.Xml.Linq;
using Mono.Cecil;

namespace RehabTrack.Architecture.Tests.Edges;

public sealed class AssemblyEdgeTests
{
    public static TheoryData<string> Projects => [.. Assemblies.SourceProjects];

    [Fact]
    public void The_table_names_every_source_project_and_no_other() =>
        Assert.Equal(Assemblies.SourceProjects.Order(StringComparer.Ordinal), AllowedEdges.OfAssemblies.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Projects))]
    public void An_assembly_uses_only_what_the_table_allows(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(Violations(assembly));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_file_refers_only_to_what_the_table_allows(string project)
    {
        XDocument file = XDocument.Parse(Repository.Read($"src/{project}/{project}.csproj"));

        IEnumerable<string> referred = file.Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(((string)reference.Attribute("Include")!).Replace('\\', '/')));

        Expect.None(referred.Except(AllowedEdges.OfAssemblies[project]));
    }

    [Fact]
    public void A_planted_edge_is_found()
    {
        using AssemblyDefinition assembly = Assemblies.Load("RehabTrack.Exchange");
        assembly.MainModule.AssemblyReferences.Add(new AssemblyNameReference("RehabTrack.Records", new Version(0, 1, 0, 0)));

        Assert.Equal(["RehabTrack.Records"], Violations(assembly));
    }

    private static IReadOnlyList<string> Violations(AssemblyDefinition assembly) =>
        [
            .. assembly
                .MainModule.AssemblyReferences.Select(reference => reference.Name)
                .Where(name => name.StartsWith("RehabTrack.", StringComparison.Ordinal))
                .Except(AllowedEdges.OfAssemblies[assembly.Name.Name]),
        ];
}
