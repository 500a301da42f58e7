using System.Reflection;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RehabTrack.Rechecks.Exercise;
using RehabTrack.Rechecks.Permits;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Bookings;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Feeds;
using RehabTrack.Records.Horses;
using RehabTrack.Records.Imports;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.People;
using RehabTrack.Records.Referrals;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Shares;
using RehabTrack.Records.Start;
using RehabTrack.Records.Tests.Exercise;
using RehabTrack.Records.Tests.House;

namespace RehabTrack.Records.Tests.Rights;

/// <summary>
/// Every use case, found by reflection, asked by a vet of another practice with every kind of record of the first one: what is another
/// practice's is answered like what is not there, tells nothing, and stays as it was. The same by people from outside who stand beside no horse.
/// And every use case asked by every role: it refuses where the table gives no right, and only there.
/// </summary>
public sealed class UseCaseWalkTests(UseCaseWalkTests.TwoPractices two) : IClassFixture<UseCaseWalkTests.TwoPractices>
{
    private const string Mark = "OWNMARK";

    public static TheoryData<string> UseCases => [.. RecordsServices.UseCases().Select(type => type.FullName!)];

    [Theory]
    [MemberData(nameof(UseCases))]
    public async Task What_is_another_practices_is_answered_like_what_is_not_there(string useCase)
    {
        Type type = typeof(UseCase<,>).Assembly.GetType(useCase)!;
        foreach (bool isNew in (bool[])[false, true])
        {
            string nothing = await AskAsync(two.House, type, two.Stranger, Guid.NewGuid(), isNew);
            foreach ((string kind, Guid id) in two.Ids)
            {
                string answer = await AskAsync(two.House, type, two.Stranger, id, isNew);

                Assert.Equal((kind, nothing), (kind, answer));
                Assert.DoesNotContain(Mark, answer, StringComparison.Ordinal);
            }
        }

        Assert.Equal(two.Before, await two.StandAsync());
    }

    [Theory]
    [MemberData(nameof(UseCases))]
    public async Task What_is_a_neighbours_is_answered_to_people_from_outside_like_what_is_not_there(string useCase)
    {
        Type type = typeof(UseCase<,>).Assembly.GetType(useCase)!;
        foreach (Actor outside in two.People.Values.Where(person => !RightsTable.IsStaff(person.Role)))
        {
            foreach (bool isNew in (bool[])[false, true])
            {
                string nothing = await AskAsync(two.House, type, outside, Guid.NewGuid(), isNew);
                foreach ((string kind, Guid id) in two.Ids)
                {
                    string answer = await AskAsync(two.House, type, outside, id, isNew);

                    Assert.Equal((outside.Role, kind, nothing), (outside.Role, kind, answer));
                    Assert.DoesNotContain(Mark, answer, StringComparison.Ordinal);
                }
            }
        }

        Assert.Equal(two.Before, await two.StandAsync());
    }

    [Fact]
    public async Task The_same_questions_by_the_practices_own_vet_reach_most_of_the_records()
    {
        await using TwoPractices own = new();
        await own.InitializeAsync();
        List<string> reached = [];
        foreach (Type type in RecordsServices.UseCases())
        {
            string nothing = await AskAsync(own.House, type, own.House.Vet, Guid.NewGuid(), isNew: false);
            foreach ((string _, Guid id) in own.Ids)
            {
                if (await AskAsync(own.House, type, own.House.Vet, id, isNew: false) != nothing)
                {
                    reached.Add(type.Name);
                    break;
                }
            }
        }

        Assert.True(reached.Count > 45, $"{reached.Count}: {string.Join(", ", reached)}");
    }

    [Theory]
    [MemberData(nameof(UseCases))]
    public async Task Each_refuses_a_role_where_the_table_gives_no_right_and_only_there(string useCase)
    {
        Type type = typeof(UseCase<,>).Assembly.GetType(useCase)!;
        foreach ((Role role, Actor actor) in two.People)
        {
            bool isRefused = (await AskAsync(two.House, type, actor, null)).StartsWith("not-allowed", StringComparison.Ordinal);

            Assert.Equal((role, RightsTable.ReachOf(role, AccessPage.RightOf(type)) == Reach.None), (role, isRefused));
        }
    }

    private static Task<string> AskAsync(RecordsHouse house, Type type, Actor actor, Guid id, bool isNew) =>
        AskAsync(house, type, actor, UseCaseInput.Make(type.GetMethod("ExecuteAsync")!.GetParameters()[1].ParameterType, id, isNew));

    /// <summary>The codes of the problems, or the value; where the input is too plain to be taken, what broke.</summary>
    private static async Task<string> AskAsync(RecordsHouse house, Type type, Actor actor, object? input)
    {
        MethodInfo way = type.GetMethod("ExecuteAsync")!;
        input ??= way.GetParameters()[1].ParameterType is { IsValueType: true } value ? Activator.CreateInstance(value) : null;
        try
        {
            Task asked = (Task)way.Invoke(house.Get(type), [actor, input, CancellationToken.None])!;
            await asked;
            object outcome = asked.GetType().GetProperty("Result")!.GetValue(asked)!;
            var problems = (IReadOnlyList<Problem>)outcome.GetType().GetProperty("Problems")!.GetValue(outcome)!;
            return problems.Count > 0
                ? string.Join(", ", problems.Select(problem => $"{problem.Code} {problem.Field}"))
                : Told(outcome.GetType().GetProperty("ValueOrDefault")!.GetValue(outcome));
        }
        catch (Exception broken) when (broken is not Xunit.Sdk.XunitException)
        {
            return broken.GetType().Name;
        }
    }

    // New ids differ from question to question; what is told of records does not.
    private static string Told(object? value) =>
        WithoutIds(JsonSerializer.Serialize(value, value?.GetType() ?? typeof(object), RecordJson.Options));

    private static string WithoutIds(string json) =>
        System.Text.RegularExpressions.Regex.Replace(json, "[0-9a-f]{8}-[0-9a-f-]{27}", "ID", default, TimeSpan.FromSeconds(10));

    /// <summary>A practice with a record of every kind, each text of it marked, and a second practice in the same database.</summary>
    public sealed class TwoPractices : IAsyncLifetime, IAsyncDisposable
    {
        private ExerciseHouse? _at;

        internal RecordsHouse House => _at!.House;

        internal Actor Stranger { get; private set; } = null!;

        /// <summary>One id of each kind of record of the first practice.</summary>
        internal Dictionary<string, Guid> Ids { get; private set; } = [];

        internal Dictionary<Role, Actor> People { get; } = [];

        /// <summary>Every record of the first practice with its version, and how many lines its trail has.</summary>
        internal string Before { get; private set; } = "";

        public async Task InitializeAsync()
        {
            _at = await ExerciseHouse.BuildAsync();
            await FillAsync(_at);
            foreach (Role role in Enum.GetValues<Role>())
            {
                People.Add(role, await House.PersonAsync($"Somebody {role}", role));
            }

            Stranger = await House.FoundSecondPracticeAsync();
            Ids = await House.LookAsync(async records =>
            {
                Dictionary<string, Guid> ids = [];
                foreach (IQueryable<KeptRecord> kept in Kept(records))
                {
                    if (await kept.AsNoTracking().FirstOrDefaultAsync(record => record.ArchivedAt == null) is { } one)
                    {
                        ids.Add(one.GetType().Name, one.Id);
                    }
                }

                return ids;
            });
            Assert.True(Ids.Count > 15, string.Join(", ", Ids.Keys));
            Before = await StandAsync();
        }

        /// <summary>How the records of the first practice stand.</summary>
        internal Task<string> StandAsync() =>
            House.LookAsync(async records =>
            {
                List<string> stand = [];
                foreach (IQueryable<KeptRecord> kept in Kept(records))
                {
                    stand.AddRange((await kept.AsNoTracking().ToListAsync()).Select(record => $"{record.Id} {record.Version}"));
                }

                return string.Join('\n', stand.Order(StringComparer.Ordinal));
            });

        async Task IAsyncLifetime.DisposeAsync() => await DisposeAsync();

        public ValueTask DisposeAsync() => _at?.DisposeAsync() ?? ValueTask.CompletedTask;

        private static IEnumerable<IQueryable<KeptRecord>> Kept(RecordsContext records) =>
            typeof(RecordsContext)
                .GetProperties()
                .Where(property =>
                    property.PropertyType is { IsGenericType: true } type
                    && type.GetGenericTypeDefinition() == typeof(DbSet<>)
                    && type.GetGenericArguments()[0].IsSubclassOf(typeof(KeptRecord))
                )
                .Select(property => (IQueryable<KeptRecord>)property.GetValue(records)!);

        private static async Task FillAsync(ExerciseHouse at)
        {
            RecordsHouse house = at.House;
            Actor referring = await house.PersonAsync($"Anwen {Mark}", Role.ReferringVet);
            await MustAsync(house.Get<SaveYard>().ExecuteAsync(house.Vet, new SaveYardInput { CommandId = Guid.NewGuid(), Name = Mark }));
            HorseView horse = (await house.Get<GetHorse>().ExecuteAsync(house.Vet, at.Horse)).Value;
            await MustAsync(
                house
                    .Get<SaveHorse>()
                    .ExecuteAsync(
                        house.Vet,
                        new SaveHorseInput
                        {
                            CommandId = Guid.NewGuid(),
                            Id = horse.Id,
                            Version = horse.Version,
                            Name = Mark,
                            Markings = Mark,
                            OwnerId = at.Owner.PersonId,
                            TrainerId = at.Trainer.PersonId,
                            ReferringVetId = referring.PersonId,
                        }
                    )
            );
            await MustAsync(
                house
                    .Get<SaveHorsePhoto>()
                    .ExecuteAsync(
                        house.Vet,
                        new SaveHorsePhotoInput
                        {
                            CommandId = Guid.NewGuid(),
                            HorseId = at.Horse,
                            ContentType = "image/png",
                            Content = [1, 2, 3],
                        }
                    )
            );
            await house.SignedAsync(
                at.Case,
                Wishes.Content(ExerciseHouse.Today.AddDays(-20), (16, 0.1), (18, 0.3), (20, 0)) with
                {
                    Note = Mark,
                }
            );
            await MustAsync(at.SignAsync(ExerciseHouse.Plan with { Title = Mark }));
            await MustAsync(at.DecideAsync(DecisionKind.Hold, input => input with { Decision = input.Decision with { Reason = Mark } }));
            await MustAsync(at.DraftAsync(ExerciseHouse.Plan with { Title = Mark }));
            await MustAsync(at.LogAsync(new DayLog { Date = ExerciseHouse.Today, Done = new OutingMinutes(20) }));
            await MustAsync(at.ReportAsync(words: Mark));
            await MustAsync(house.Get<NoteLook>().ExecuteAsync(at.Trainer, new NoteLookInput(Guid.NewGuid(), [at.Horse])));
            await at.StandInAsync(await house.PersonAsync($"Sorrel {Mark}", Role.Vet), 1, 2);
            await MustAsync(
                house
                    .Get<BookRecheck>()
                    .ExecuteAsync(
                        house.Vet,
                        new BookRecheckInput(
                            Guid.NewGuid(),
                            at.Case,
                            new BookingPlan { Date = ExerciseHouse.Today.AddDays(30), Place = Mark }
                        )
                    )
            );
            await MustAsync(
                house.Get<NoteCall>().ExecuteAsync(house.Vet, new NoteCallInput(Guid.NewGuid(), at.Case, default, at.Owner.PersonId, Mark))
            );
            await MustAsync(
                house.Get<StageImportFile>().ExecuteAsync(house.Vet, new StageImportFileInput(Guid.NewGuid(), $"{Mark}.csv", [65]))
            );
            await MustAsync(house.Get<RenewFeed>().ExecuteAsync(house.Vet, new RenewFeedInput(Guid.NewGuid(), new string('b', 64))));
            await MustAsync(
                house
                    .Get<ReleaseReport>()
                    .ExecuteAsync(house.Vet, new ReleaseReportInput(Guid.NewGuid(), at.Case, referring.PersonId, Mark))
            );
            await MustAsync(
                house
                    .Get<RenewShare>()
                    .ExecuteAsync(
                        house.Vet,
                        new RenewShareInput
                        {
                            CommandId = Guid.NewGuid(),
                            PersonId = at.Trainer.PersonId,
                            Relation = HorseRelation.Trainer,
                            SecretHash = new string('c', 64),
                        }
                    )
            );
        }

        private static async Task MustAsync<T>(Task<Outcome<T>> asked) => Assert.Empty((await asked).Problems);
    }
}
