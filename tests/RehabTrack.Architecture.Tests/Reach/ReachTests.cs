using Mono.Cecil;
using Mono.Cecil.Cil;
using RehabTrack.Architecture.Tests.Edges;

namespace RehabTrack.Architecture.Tests.Reach;

/// <summary>
/// What the program can do beyond its own pages and records: OWASP ASVS 5.0, 1.2.4, 1.2.5, 1.2.9, 1.3.6, 1.5.2, 11.2.1, 11.3.2, 13.2.4, 13.2.5
/// (numbers as in docs/security.md).
/// </summary>
public sealed class ReachTests
{
    private const string MailSender = "RehabTrack.Web.Features.Reminders.MailSender";

    private static readonly string[] Network =
    [
        "System.Net.Http.",
        "System.Net.Sockets.",
        "System.Net.Mail.",
        "System.Net.WebRequest",
        "System.Net.WebClient",
        "MailKit.Net.",
    ];
    private static readonly string[] NamedTypes =
    [
        "System.Runtime.Serialization.",
        "System.Xml.Serialization.",
        "System.Xml.XmlReader",
        "System.Xml.XmlDocument",
        "Newtonsoft.",
        "System.Text.Json.Serialization.JsonDerivedTypeAttribute",
    ];
    private static readonly string[] Code =
    [
        "System.Reflection.Emit.",
        "System.Linq.Dynamic.",
        "Microsoft.CodeAnalysis.CSharp",
        "Microsoft.CodeAnalysis.Scripting",
        "System.Runtime.Loader.",
    ];

    private static readonly string[] Proven =
    [
        "CryptographicException",
        "CryptographicOperations",
        "HashAlgorithm",
        "HashAlgorithmName",
        "IncrementalHash",
        "RandomNumberGenerator",
        "SHA256",
    ];

    /// <summary>What writes statements of its own; none of it takes a word that a person typed.</summary>
    private static readonly string[] StatementWriters =
    [
        "RehabTrack.Records.Keeping.BulkInsert`1",
        "RehabTrack.Records.Keeping.OutsideRows",
        "RehabTrack.Records.Sqlite.Backups.OpenDatabase",
        "RehabTrack.Records.Sqlite.DurabilityInterceptor",
        "RehabTrack.Records.Sqlite.SqliteStart",
        "RehabTrack.Records.Sqlite.Trails.OldLines",
    ];

    public static TheoryData<string> Projects => [.. Assemblies.SourceProjects];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Nothing_but_the_letters_goes_out_and_no_other_program_is_started(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(Used(assembly, IsOutside).Where(use => use.User != MailSender).Select(Told));
    }

    [Fact]
    public void The_letters_are_seen_to_go_out()
    {
        using AssemblyDefinition assembly = Assemblies.Load("RehabTrack.Web");

        Assert.Contains((MailSender, "MailKit.Net.Smtp.SmtpClient"), Used(assembly, IsOutside));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Nothing_that_is_read_names_the_types_it_becomes_and_no_code_is_made(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(Used(assembly, name => Starts(name, [.. NamedTypes, .. Code])).Select(Told));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void What_is_hashed_and_drawn_is_so_by_SHA_256_and_the_random_numbers_of_the_system(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(Used(assembly, IsUnproven).Select(Told));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_statement_of_its_own_is_written_in_few_places_none_of_which_takes_what_people_type(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(
            Calls(assembly)
                .Where(call =>
                    IsStatement(call.Called) && !StatementWriters.Contains(call.User, StringComparer.Ordinal) && !IsMigration(call.User)
                )
                .Select(call => $"{call.User} calls {call.Called.Name}.")
        );
    }

    [Fact]
    public void Who_writes_statements_of_its_own_is_seen_to()
    {
        List<string> writers = [];
        foreach (string project in Assemblies.SourceProjects)
        {
            using AssemblyDefinition assembly = Assemblies.Load(project);
            writers.AddRange(
                Calls(assembly).Where(call => IsStatement(call.Called)).Select(call => call.User).Where(user => !IsMigration(user))
            );
        }

        Assert.Equal(StatementWriters, writers.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_pattern_stands_in_the_code_and_gives_up_after_a_time(string project)
    {
        using AssemblyDefinition assembly = Assemblies.Load(project);

        Expect.None(
            Patterns(assembly)
                .Where(pattern => pattern.Attribute.ConstructorArguments is not [_, _, { Value: > 0 }, ..])
                .Select(pattern => $"{pattern.Method.FullName} has no time limit.")
        );
        Expect.None(
            Calls(assembly)
                .Where(call =>
                    call.Called.DeclaringType.FullName == "System.Text.RegularExpressions.Regex"
                    && (call.Called.Name == ".ctor" || call.Called is { HasThis: false, Parameters.Count: > 1 })
                    && !call.User.StartsWith("System.Text.RegularExpressions.Generated", StringComparison.Ordinal)
                )
                .Select(call => $"{call.User} makes a pattern while it runs.")
        );
    }

    [Fact]
    public void Patterns_are_seen()
    {
        using AssemblyDefinition assembly = Assemblies.Load("RehabTrack.Rechecks");

        Assert.NotEmpty(Patterns(assembly));
    }

    [Fact]
    public void A_planted_program_connection_cipher_and_statement_are_found()
    {
        using AssemblyDefinition assembly = Assemblies.Load("RehabTrack.Exchange");
        ModuleDefinition module = assembly.MainModule;
        TypeDefinition planted = new(
            "RehabTrack.Exchange",
            "Planted",
            TypeAttributes.Public | TypeAttributes.Class,
            module.TypeSystem.Object
        );
        foreach (Type type in (Type[])[typeof(System.Diagnostics.Process), typeof(HttpClient), typeof(System.Security.Cryptography.Aes)])
        {
            planted.Fields.Add(new FieldDefinition(type.Name, FieldAttributes.Private, module.ImportReference(type)));
        }

        MethodDefinition method = new("Use", MethodAttributes.Public | MethodAttributes.Static, module.TypeSystem.Void);
        method
            .Body.GetILProcessor()
            .Emit(OpCodes.Call, module.ImportReference(typeof(System.Data.IDbCommand).GetProperty("CommandText")!.SetMethod));
        planted.Methods.Add(method);
        module.Types.Add(planted);

        Assert.Equal(
            ["System.Diagnostics.Process", "System.Net.Http.HttpClient"],
            Used(assembly, IsOutside).Where(use => use.User == planted.FullName).Select(use => use.Used)
        );
        Assert.Equal([(planted.FullName, "System.Security.Cryptography.Aes")], Used(assembly, IsUnproven));
        Assert.Equal(planted.FullName, Assert.Single(Calls(assembly), call => IsStatement(call.Called)).User);
    }

    private static bool IsOutside(string name) =>
        // What names the kind of an address, and what went wrong on a way out, opens none.
        (Starts(name, Network) && name is not ("System.Net.Sockets.SocketException" or "System.Net.Sockets.AddressFamily"))
        || name is "System.Diagnostics.Process" or "System.Diagnostics.ProcessStartInfo";

    private static bool IsUnproven(string name) =>
        name == "System.Random"
        || (
            Starts(name, ["System.Security.Cryptography."])
            && !Proven.Contains(name["System.Security.Cryptography.".Length..], StringComparer.Ordinal)
        );

    private static bool IsStatement(MethodReference called) =>
        called.Name is "set_CommandText"
        || called.Name.Contains("SqlRaw", StringComparison.Ordinal)
        || called.Name.Contains("SqlQueryRaw", StringComparison.Ordinal);

    private static bool IsMigration(string user) => user.Contains(".Migrations.", StringComparison.Ordinal);

    private static bool Starts(string name, string[] beginnings) =>
        beginnings.Any(beginning => name.StartsWith(beginning, StringComparison.Ordinal));

    private static string Told((string User, string Used) use) => $"{use.User} uses {use.Used}.";

    private static IReadOnlyList<(string User, string Used)> Used(AssemblyDefinition assembly, Func<string, bool> isLookedFor) =>
        [
            .. assembly
                .MainModule.GetTypes()
                .SelectMany(type => UsedTypes.Of(type).Select(used => (Outermost(type).FullName, used.FullName)))
                .Where(use => isLookedFor(use.Item2))
                .Distinct(),
        ];

    private static IEnumerable<(string User, MethodReference Called)> Calls(AssemblyDefinition assembly) =>
        from type in assembly.MainModule.GetTypes()
        from method in type.Methods
        where method.HasBody
        from instruction in method.Body.Instructions
        where instruction.Operand is MethodReference
        select (Outermost(type).FullName, (MethodReference)instruction.Operand);

    private static IReadOnlyList<(MethodDefinition Method, CustomAttribute Attribute)> Patterns(AssemblyDefinition assembly) =>
        [
            .. from type in assembly.MainModule.GetTypes()
            from method in type.Methods
            from attribute in method.CustomAttributes
            where attribute.AttributeType.Name == "GeneratedRegexAttribute"
            select (method, attribute),
        ];

    private static TypeDefinition Outermost(TypeDefinition type) => type.DeclaringType is { } outer ? Outermost(outer) : type;
}
