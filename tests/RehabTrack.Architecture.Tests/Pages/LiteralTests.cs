using Mono.Cecil;
using RehabTrack.Architecture.Tests.Edges;

namespace RehabTrack.Architecture.Tests.Pages;

public sealed class LiteralTests
{
    [Fact]
    public void No_page_writes_text_for_persons_literally()
    {
        using AssemblyDefinition web = Assemblies.Load("RehabTrack.Web");

        Expect.None(Components(web).SelectMany(PageTexts.LiteralsOf));
    }

    [Fact]
    public void Every_page_file_is_looked_at()
    {
        using AssemblyDefinition web = Assemblies.Load("RehabTrack.Web");

        IEnumerable<string> files = Repository
            .Files("src/RehabTrack.Web", ".razor")
            .Select(path => Path.GetFileNameWithoutExtension(path))
            .Where(name => name != "_Imports");

        Expect.None(files.Except(Components(web).Select(type => type.Name.Split('`')[0])));
    }

    [Fact]
    public void Planted_literals_are_found_each_in_its_place()
    {
        using AssemblyDefinition tests = Assemblies.Load("RehabTrack.Architecture.Tests");

        Assert.Equal(
            [
                "Planted: Planted heading",
                "Planted: Planted in the code",
                "Planted: Planted pattern",
                "Planted: planted label",
                "Planted: planted parameter",
                "Planted: planted tail",
                "Planted: planted title",
            ],
            PageTexts.LiteralsOf(Component(tests, "Planted")).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void A_page_with_words_from_elsewhere_passes()
    {
        using AssemblyDefinition tests = Assemblies.Load("RehabTrack.Architecture.Tests");

        Expect.None(PageTexts.LiteralsOf(Component(tests, "Clean")));
    }

    private static TypeDefinition Component(AssemblyDefinition assembly, string name) =>
        Components(assembly).Single(type => type.Name == name);

    private static IEnumerable<TypeDefinition> Components(AssemblyDefinition assembly) =>
        assembly.MainModule.Types.Where(type => Ancestors(type).Any(one => one.Name is "ComponentBase" or "IComponent"));

    private static IEnumerable<TypeReference> Ancestors(TypeDefinition type) =>
        type
            .Interfaces.Select(one => one.InterfaceType)
            .Concat(type.BaseType is null ? [] : [type.BaseType, .. type.BaseType.Resolve() is { } parent ? Ancestors(parent) : []]);
}
