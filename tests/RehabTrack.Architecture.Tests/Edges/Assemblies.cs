using Mono.Cecil;

namespace RehabTrack.Architecture.Tests.Edges;

/// <summary>The built assemblies of the project, beside the tests.</summary>
internal static class Assemblies
{
    public const string Heart = "RehabTrack.Rechecks";

    public static IReadOnlyList<string> SourceProjects { get; } =
    [.. Repository.Files("src", ".csproj").Select(path => Path.GetFileNameWithoutExtension(path))];

    public static AssemblyDefinition Load(string name)
    {
        DefaultAssemblyResolver resolver = new();
        resolver.AddSearchDirectory(AppContext.BaseDirectory);
        return AssemblyDefinition.ReadAssembly(
            Path.Combine(AppContext.BaseDirectory, name + ".dll"),
            new ReaderParameters { AssemblyResolver = resolver, InMemory = true }
        );
    }
}
