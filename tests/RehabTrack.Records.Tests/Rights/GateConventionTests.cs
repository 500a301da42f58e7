using System.Reflection;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Backups;
using RehabTrack.Records.Cases;
using RehabTrack.Records.Covers;
using RehabTrack.Records.Examinations;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.History;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Links;
using RehabTrack.Records.People;
using RehabTrack.Records.Practices;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Repeats;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>No use case goes round the gate: by shape, on planted ways round, and by asking each of them.</summary>
public sealed class GateConventionTests(GateConventionTests.Doors doors) : IClassFixture<GateConventionTests.Doors>
{
    private static readonly Type[] StepsOfStartingUp =
    [
        typeof(SignInDoor),
        typeof(FeedDoor),
        typeof(ShareDoor),
        typeof(AccessBook),
        typeof(VerifyTrail),
        typeof(ForgetOldWords),
        typeof(SetUpDoor),
        typeof(AccountStore),
        typeof(SessionDoor),
        typeof(InvitationDoor),
        typeof(LoadDemo),
        typeof(RenewSummaries),
    ];

    private static readonly Type[] ForVetsOnly =
    [
        typeof(SignExamination),
        typeof(AmendExamination),
        typeof(PinLink),
        typeof(BreakLink),
        typeof(WithdrawLinkWord),
        typeof(SignPlan),
        typeof(SignDecision),
        typeof(ReleaseDecision),
        typeof(ReleaseReport),
        typeof(CloseCase),
    ];

    private static readonly Type[] NotForAssistants =
    [
        typeof(ChangePractice),
        typeof(TakeError),
        typeof(SaveCover),
        typeof(WithdrawCover),
        typeof(BringBackCover),
        typeof(RenewFeed),
        typeof(RevokeFeed),
        typeof(ListBackups),
        typeof(MakeBackup),
        typeof(GetTrail),
        typeof(CheckTrail),
        typeof(ExportTrail),
        typeof(ExportPerson),
        typeof(ErasePerson),
        typeof(InvitePerson),
        typeof(GetAccount),
    ];

    public static TheoryData<string> UseCases => [.. RecordsServices.UseCases().Select(type => type.FullName!)];

    [Fact]
    public void Every_way_to_the_database_is_a_use_case_or_a_named_step_of_starting_up()
    {
        Assert.Empty(WaysRound(typeof(UseCase<,>).Assembly.GetTypes()));
        Assert.True(RecordsServices.UseCases().Count() > 30);
    }

    [Fact]
    public void A_planted_way_round_the_gate_is_found()
    {
        Assert.Equal(
            [typeof(PlantedDoor), typeof(PlantedExecute), typeof(PlantedField)],
            WaysRound([typeof(PlantedDoor), typeof(PlantedExecute), typeof(PlantedField), typeof(GetHorse)])
        );
    }

    [Fact]
    public void The_one_way_in_cannot_be_overridden_and_cannot_be_written_outside()
    {
        MethodInfo way = typeof(UseCase<,>).GetMethod("ExecuteAsync")!;

        Assert.False(way.IsVirtual);
        Assert.All(
            typeof(UseCase<,>).GetConstructors(BindingFlags.Instance | BindingFlags.NonPublic),
            constructor => Assert.True(constructor.IsFamilyAndAssembly)
        );
        Assert.Empty(typeof(UseCase<,>).GetConstructors());
    }

    [Theory]
    [MemberData(nameof(UseCases))]
    public async Task Each_refuses_a_person_who_was_put_away_before_it_looks_at_what_is_asked(string useCase)
    {
        Assert.Equal("not-allowed", await CodeAsync(doors.House, TypeOf(useCase), doors.Gone));
    }

    [Theory]
    [MemberData(nameof(UseCases))]
    public async Task Each_refuses_the_roles_that_the_table_gives_no_right(string useCase)
    {
        Type type = TypeOf(useCase);
        Type[] forEverybody = [typeof(GetPractice), typeof(FindHorses), typeof(GetHorse), typeof(ListSessions), typeof(EndSession)];
        Type[] forOwners = [typeof(GetYard), typeof(GetHorsePhoto), typeof(NoteLook), typeof(ReportConcern), typeof(GetConcernLetter)];
        Type[] forTrainers = [.. forOwners, typeof(LogDay), typeof(PauseWork), typeof(LowerWork)];
        foreach (Role role in Enum.GetValues<Role>())
        {
            bool refused = role switch
            {
                Role.Vet => false,
                Role.Administrator => ForVetsOnly.Contains(type),
                Role.Assistant => ForVetsOnly.Contains(type) || NotForAssistants.Contains(type),
                Role.Trainer => !forEverybody.Contains(type) && !forTrainers.Contains(type),
                Role.Owner => !forEverybody.Contains(type) && !forOwners.Contains(type),
                Role.ReferringVet => !forEverybody.Contains(type) && type != typeof(GetReports) && type != typeof(GetReport),
            };

            Assert.Equal(refused, await CodeAsync(doors.House, type, doors.People[role]) == "not-allowed");
        }
    }

    [Fact]
    public async Task A_claimed_role_that_is_no_longer_held_opens_nothing()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor owner = await house.PersonAsync("Wren Ashby", Role.Owner);

        Outcome<HorsePage> refused = await house.Get<FindHorses>().ExecuteAsync(owner with { Role = Role.Vet }, new FindHorsesInput());

        Assert.Equal("not-allowed", Assert.Single(refused.Problems).Code);
    }

    [Fact]
    public async Task A_contact_without_sign_in_opens_nothing()
    {
        await using RecordsHouse house = await RecordsHouse.BuildAsync();
        Actor contact = await house.PersonAsync("Wren Ashby", Role.Owner, canSignIn: false);

        Outcome<HorsePage> refused = await house.Get<FindHorses>().ExecuteAsync(contact, new FindHorsesInput());

        Assert.Equal("not-allowed", Assert.Single(refused.Problems).Code);
    }

    private static Type[] WaysRound(IEnumerable<Type> types) =>
        [
            .. types.Where(type =>
                !type.IsNested
                && !RecordsServices.IsUseCase(type)
                && !StepsOfStartingUp.Contains(type)
                && type != typeof(UseCase<,>)
                && type != typeof(Command<,>)
                && type != typeof(RecordsAccess)
                && (HoldsAccess(type) || type.GetMethod("ExecuteAsync") is not null)
            ),
        ];

    private static bool HoldsAccess(Type type)
    {
        const BindingFlags Any =
            BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        return type.GetConstructors(Any).Any(made => made.GetParameters().Any(parameter => IsAccess(parameter.ParameterType)))
            || type.GetFields(Any).Any(field => IsAccess(field.FieldType));
    }

    private static bool IsAccess(Type type) =>
        type == typeof(RecordsAccess) || (type.IsGenericType && type.Name.StartsWith("IDbContextFactory", StringComparison.Ordinal));

    private static Type TypeOf(string name) => typeof(UseCase<,>).Assembly.GetType(name)!;

    /// <summary>Asks with nothing: a use case that is allowed complains of that, or answers; one that is not says so first.</summary>
    private static async Task<string?> CodeAsync(RecordsHouse house, Type type, Actor actor)
    {
        MethodInfo way = type.GetMethod("ExecuteAsync")!;
        Type input = way.GetParameters()[1].ParameterType;
        object? nothing = input.IsValueType ? Activator.CreateInstance(input) : null;
        try
        {
            Task asked = (Task)way.Invoke(house.Get(type), [actor, nothing, CancellationToken.None])!;
            await asked;
            object outcome = asked.GetType().GetProperty("Result")!.GetValue(asked)!;
            var problems = (IReadOnlyList<Problem>)outcome.GetType().GetProperty("Problems")!.GetValue(outcome)!;
            return problems is [Problem first, ..] ? first.Code : null;
        }
        catch (ArgumentNullException missing) when (missing.ParamName == "input")
        {
            return "input-missing";
        }
    }

    /// <summary>One practice for all questions: asking with nothing writes nothing that another question could meet.</summary>
    public sealed class Doors : IAsyncLifetime
    {
        private RecordsHouse? _house;

        internal RecordsHouse House => _house ?? throw new InvalidOperationException("The house has not been built.");

        /// <summary>A vet who was put away.</summary>
        internal Actor Gone { get; private set; } = null!;

        internal Dictionary<Role, Actor> People { get; } = [];

        /// <inheritdoc />
        public async Task InitializeAsync()
        {
            _house = await RecordsHouse.BuildAsync();
            Gone = await House.PersonAsync("Sorrel Dunn", Role.Vet);
            PersonView person = (await House.Get<GetPerson>().ExecuteAsync(House.Vet, Gone.PersonId)).Value;
            Outcome<Saved> archived = await House
                .Get<ArchivePerson>()
                .ExecuteAsync(House.Vet, new RecordInput(Guid.NewGuid(), person.Id, person.Version));
            Assert.True(archived.Succeeded);
            foreach (Role role in Enum.GetValues<Role>())
            {
                People.Add(role, await House.PersonAsync($"Somebody {role}", role));
            }
        }

        /// <inheritdoc />
        public async Task DisposeAsync()
        {
            if (_house is not null)
            {
                await _house.DisposeAsync();
            }
        }
    }
}

internal sealed class PlantedDoor(RecordsAccess access)
{
    public RecordsAccess Access => access;
}

internal sealed class PlantedExecute
{
    public Task<int> ExecuteAsync(Actor actor) => Task.FromResult(actor.Name.Length);
}

internal sealed class PlantedField
{
    internal readonly RecordsAccess? Access = null;
}
