using Mono.Cecil;
using Mono.Cecil.Cil;

namespace RehabTrack.Architecture.Tests.Edges;

public sealed class HeartFolderTests
{
    [Fact]
    public void Every_folder_of_the_heart_stands_in_the_table() =>
        Assert.Equal(
            Repository
                .Files("src/" + Assemblies.Heart, ".cs")
                .Select(path => path.Split('/')[2])
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
            AllowedEdges.HeartFolders.Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_file_of_the_heart_has_the_namespace_of_its_folder()
    {
        IEnumerable<string> strays = Repository
            .Files("src/" + Assemblies.Heart, ".cs")
            .Where(path =>
                !Repository.Read(path).Contains($"namespace {string.Join('.', path.Split('/')[1..^1])};", StringComparison.Ordinal)
            );

        Expect.None(strays);
    }

    [Fact]
    public void A_folder_of_the_heart_uses_only_those_above_it()
    {
        using AssemblyDefinition heart = Assemblies.Load(Assemblies.Heart);

        Expect.None(Violations(heart));
    }

    [Fact]
    public void A_planted_field_of_a_later_folder_is_found()
    {
        using AssemblyDefinition heart = Assemblies.Load(Assemblies.Heart);
        TypeDefinition planted = Plant(heart);
        planted.Fields.Add(new FieldDefinition("verdict", FieldAttributes.Private, Later(heart)));

        Assert.Equal(["Quantities.Planted uses Healing.Trend"], Violations(heart));
    }

    [Fact]
    public void A_planted_use_inside_a_method_body_is_found()
    {
        using AssemblyDefinition heart = Assemblies.Load(Assemblies.Heart);
        MethodDefinition method = new("Use", MethodAttributes.Public | MethodAttributes.Static, heart.MainModule.TypeSystem.Void);
        method.Body.GetILProcessor().Emit(OpCodes.Ldtoken, Later(heart));
        method.Body.GetILProcessor().Emit(OpCodes.Pop);
        method.Body.GetILProcessor().Emit(OpCodes.Ret);
        Plant(heart).Methods.Add(method);

        Assert.Equal(["Quantities.Planted uses Healing.Trend"], Violations(heart));
    }

    private static TypeDefinition Later(AssemblyDefinition heart) => heart.MainModule.GetType(Assemblies.Heart + ".Healing.Trend");

    private static TypeDefinition Plant(AssemblyDefinition heart)
    {
        TypeDefinition planted = new(
            Assemblies.Heart + ".Quantities",
            "Planted",
            TypeAttributes.Public | TypeAttributes.Class,
            heart.MainModule.TypeSystem.Object
        );
        heart.MainModule.Types.Add(planted);
        return planted;
    }

    private static IReadOnlyList<string> Violations(AssemblyDefinition heart) =>
        [
            .. heart
                .MainModule.GetTypes()
                .Where(type => FolderOf(type) is not null)
                .SelectMany(type =>
                    UsedTypes
                        .Of(type)
                        .Where(used => FolderOf(used) is { } folder && Rank(folder) > Rank(FolderOf(type)!))
                        .Select(used => $"{FolderOf(type)}.{Outermost(type).Name} uses {FolderOf(used)}.{Outermost(used).Name}")
                )
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    private static int Rank(string folder) => AllowedEdges.HeartFolders.TakeWhile(one => one != folder).Count();

    private static TypeReference Outermost(TypeReference type) => type.DeclaringType is null ? type : Outermost(type.DeclaringType);

    private static string? FolderOf(TypeReference type)
    {
        string name = Outermost(type).Namespace;
        return name.StartsWith(Assemblies.Heart + ".", StringComparison.Ordinal)
            ? name[(Assemblies.Heart.Length + 1)..].Split('.')[0]
            : null;
    }
}
