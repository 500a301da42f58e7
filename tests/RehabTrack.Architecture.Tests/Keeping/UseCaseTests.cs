using Mono.Cecil;
using Mono.Cecil.Cil;
using RehabTrack.Architecture.Tests.Edges;

namespace RehabTrack.Architecture.Tests.Keeping;

/// <summary>There is one way to the records, and it asks the gate.</summary>
public sealed class UseCaseTests : IDisposable
{
    /// <summary>What runs before there is anybody to ask for.</summary>
    private static readonly Dictionary<string, string> BeforeAnybodyIsThere = new(StringComparer.Ordinal)
    {
        ["SignInDoor"] = "tells who is signing in",
        ["FeedDoor"] = "answers calendar programs under a secret address",
        ["ShareDoor"] = "tells who comes through a share link; what they may is asked at the gate",
        ["AccessBook"] = "notes who came in and who was not let in; reads nothing",
        ["VerifyTrail"] = "checks hashes for whoever has the database in hand; tells no word of what is kept",
        ["ForgetOldWords"] = "empties what is about people and was kept long enough",
        ["SetUpDoor"] = "makes the first practice and its first person, once",
        ["AccountStore"] = "keeps what passwords are checked against; yields nothing of what a practice keeps",
        ["SessionDoor"] = "begins, looks up and ends sessions",
        ["InvitationDoor"] = "turns an invitation into a password, once",
        ["RenewSummaries"] = "computes again what an older engine computed",
        ["LoadDemo"] = "opens an empty data folder with the invented practice, through the use cases",
    };

    private readonly AssemblyDefinition _records = Assemblies.Load("RehabTrack.Records");

    [Fact]
    public void Whatever_can_open_the_records_is_a_use_case_or_runs_before_anybody_is_there() =>
        Expect.None(Doors().Where(IsSideDoor).Select(type => type.Name));

    [Fact]
    public void A_planted_side_door_is_found()
    {
        TypeDefinition planted = new(
            "RehabTrack.Records",
            "PlantedDoor",
            TypeAttributes.Public | TypeAttributes.Class,
            _records.MainModule.TypeSystem.Object
        );
        MethodDefinition constructor = new(
            ".ctor",
            MethodAttributes.Public | MethodAttributes.RTSpecialName | MethodAttributes.SpecialName,
            _records.MainModule.TypeSystem.Void
        );
        constructor.Parameters.Add(new ParameterDefinition(_records.MainModule.GetType("RehabTrack.Records.Room.RecordsAccess")));
        planted.Methods.Add(constructor);
        _records.MainModule.Types.Add(planted);

        Assert.Equal(["PlantedDoor"], Doors().Where(IsSideDoor).Select(type => type.Name));
    }

    [Fact]
    public void There_are_use_cases_to_look_at() => Assert.True(Doors().Count(IsUseCase) > 20);

    [Fact]
    public void The_way_in_asks_the_gate_before_anything_runs()
    {
        TypeDefinition useCase = _records.MainModule.GetType("RehabTrack.Records.Room.UseCase`2");
        string[] calls =
        [
            .. CallsOf(useCase)
                .Select(call => call.Name)
                .Where(name => name is "AskAsync" or "RunAsync" or "NotAllowed" or "get_NotAllowed"),
        ];

        Assert.Equal(["AskAsync", "get_NotAllowed", "RunAsync"], calls);
    }

    [Fact]
    public void A_use_case_has_no_other_public_method() =>
        Expect.None(
            Doors()
                .Where(IsUseCase)
                .SelectMany(type =>
                    type.Methods.Where(method => method is { IsPublic: true, IsConstructor: false })
                        .Select(method => $"{type.Name}.{method.Name}")
                )
        );

    [Fact]
    public void Whatever_writes_is_a_command_and_so_does_nothing_twice() =>
        Expect.None(Doors().Where(type => IsUseCase(type) && !IsA(type, "Command`2") && Writes(type)).Select(type => type.Name));

    [Fact]
    public void Commands_are_seen_to_write() => Assert.True(Doors().Count(type => IsA(type, "Command`2") && Writes(type)) > 5);

    public void Dispose() => _records.Dispose();

    private IEnumerable<TypeDefinition> Doors() =>
        _records.MainModule.Types.Where(type =>
            type is { IsPublic: true, IsAbstract: false }
            && type.Methods.Any(method =>
                method.IsConstructor && method.Parameters.Any(parameter => parameter.ParameterType.Name == "RecordsAccess")
            )
        );

    private static bool IsSideDoor(TypeDefinition type) => !IsUseCase(type) && !BeforeAnybodyIsThere.ContainsKey(type.Name);

    private static bool IsUseCase(TypeDefinition type) => IsA(type, "UseCase`2");

    private static bool IsA(TypeDefinition type, string ancestor) =>
        type.BaseType is { } parent
        && (parent.GetElementType().Name == ancestor || (parent.Resolve() is { } known && IsA(known, ancestor)));

    private static bool Writes(TypeDefinition type) =>
        CallsOf(type)
            .Any(call =>
                call.Name is "SaveChangesAsync" or "SaveChanges" or "ExecuteUpdateAsync" or "ExecuteDeleteAsync" or "ExecuteSqlRawAsync"
            );

    /// <summary>The calls of a type and of the state machines inside it, in the order of the code.</summary>
    private static IEnumerable<MethodReference> CallsOf(TypeDefinition type) =>
        type
            .NestedTypes.SelectMany(CallsOf)
            .Concat(
                type.Methods.Where(method => method.HasBody)
                    .SelectMany(method => method.Body.Instructions)
                    .Where(instruction => instruction.OpCode == OpCodes.Call || instruction.OpCode == OpCodes.Callvirt)
                    .Select(instruction => (MethodReference)instruction.Operand)
            );
}
