using System.Xml.Linq;
using Mono.Cecil;
using Mono.Cecil.Cil;
using RehabTrack.Architecture.Tests.Edges;

namespace RehabTrack.Architecture.Tests.Texts;

/// <summary>Every text is used, and has what it says it has. That every used text exists is the compiler's work.</summary>
public sealed class TextKeyTests
{
    [Fact]
    public void Every_text_is_used_by_name_or_by_its_code()
    {
        HashSet<string> called = new(StringComparer.Ordinal);
        HashSet<string> literals = new(StringComparer.Ordinal);
        foreach (string project in Assemblies.SourceProjects)
        {
            using AssemblyDefinition assembly = Assemblies.Load(project);
            foreach (Instruction instruction in Instructions(assembly))
            {
                switch (instruction.Operand)
                {
                    case MethodReference { Name: var name } method when name.StartsWith("get_", StringComparison.Ordinal):
                        called.Add($"{method.DeclaringType.Name}.{name[4..]}");
                        break;
                    case string literal:
                        literals.UnionWith([literal, literal.Trim('_', '-'), .. literal.Split('-')]);
                        break;
                }
            }

            literals.UnionWith(Members(assembly));
        }

        Expect.None(
            Texts()
                .Where(text => !called.Contains($"{text.File}.{text.Key}") && !IsLookedUp(text.Key, literals))
                .Select(text => $"{text.File}.{text.Key}")
        );
    }

    [Fact]
    public void A_text_that_nothing_names_is_found() => Assert.False(IsLookedUp("Nobody_says_this", ["somebody", "says"]));

    [Fact]
    public void No_text_shouts() =>
        Expect.None(Texts().Where(text => text.Value.Contains('!', StringComparison.Ordinal)).Select(text => text.Key));

    /// <summary>
    /// Whether the key is put together at run time from words that the code holds: a problem's code with '-' for '_', names joined by
    /// '_' such as an enum's name and its member, or a beginning and a name.
    /// </summary>
    private static bool IsLookedUp(string key, HashSet<string> words) =>
        words.Contains(key)
        || words.Contains(key.Replace('_', '-'))
        || key.Split('_').All(part => words.Contains(part) || part.All(char.IsAsciiDigit))
        || Enumerable.Range(1, key.Length - 1).Any(end => words.Contains(key[..end]) && words.Contains(key[end..]));

    private static IEnumerable<(string File, string Key, string Value)> Texts() =>
        Repository
            .Files("src/RehabTrack.Wording", ".resx")
            .SelectMany(path =>
                XDocument
                    .Parse(Repository.Read(path))
                    .Descendants("data")
                    .Select(data =>
                        (Path.GetFileNameWithoutExtension(path), (string)data.Attribute("name")!, (string)data.Element("value")!)
                    )
            );

    private static IEnumerable<string> Members(AssemblyDefinition assembly) =>
        assembly
            .MainModule.GetTypes()
            .Where(type => type.IsEnum)
            .SelectMany(type => type.Fields.Where(field => field.IsStatic).Select(field => field.Name).Prepend(type.Name));

    private static IEnumerable<Instruction> Instructions(AssemblyDefinition assembly) =>
        assembly
            .MainModule.GetTypes()
            .SelectMany(type => type.Methods)
            .Where(method => method.HasBody && !IsGenerated(method))
            .SelectMany(method => method.Body.Instructions);

    /// <summary>The class that the build makes of a resource file names every key of it.</summary>
    private static bool IsGenerated(MethodDefinition method) =>
        method.DeclaringType.CustomAttributes.Any(attribute =>
            attribute.AttributeType.Name == "GeneratedCodeAttribute"
            && attribute.ConstructorArguments[0].Value is string tool
            && tool.Contains("StronglyTypedResourceBuilder", StringComparison.Ordinal)
        );
}
