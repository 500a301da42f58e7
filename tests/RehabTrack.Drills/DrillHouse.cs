using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.People;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;

namespace RehabTrack.Drills;

/// <summary>The use cases on a data folder, started as the program starts them.</summary>
internal sealed class DrillHouse : IAsyncDisposable
{
    private readonly ServiceProvider services;

    private DrillHouse(ServiceProvider services)
    {
        this.services = services;
    }

    public Actor Vet { get; private set; } = null!;

    public static async Task<DrillHouse> OpenAsync(string folder)
    {
        ServiceCollection registered = new();
        registered.AddRecords();
        registered.AddSqliteRecords(folder);
        DrillHouse house = new(registered.BuildServiceProvider());
        await house.Get<SqliteStart>().RunAsync();
        // A folder that was filled before has its vet.
        IReadOnlyList<Actor> people = await house.Get<SignInDoor>().ListAsync();
        house.Vet = people is [Actor first, ..]
            ? first
            : (
                await house
                    .Get<SetUpDoor>()
                    .RunAsync(
                        new FirstPractice("Drill practice", null, "Europe/Vienna", "en", "Drill vet", Role.Vet),
                        new AccountChoice("drill", "no hash")
                    )
            ).Value;
        return house;
    }

    /// <summary>So many vets beside the first, each a person of their own.</summary>
    public async Task<IReadOnlyList<Actor>> VetsAsync(int count)
    {
        List<Actor> vets = [];
        for (int number = 1; number <= count; number++)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"Vet {number}");
            Saved saved = (
                await Get<SavePerson>()
                    .ExecuteAsync(
                        Vet,
                        new SavePersonInput
                        {
                            CommandId = Guid.CreateVersion7(),
                            Name = name,
                            Role = Role.Vet,
                            CanSignIn = true,
                        }
                    )
            ).Value;
            vets.Add(new Actor(Vet.PracticeId, saved.Id, Role.Vet, name));
        }

        return vets;
    }

    public T Get<T>()
        where T : notnull => services.GetRequiredService<T>();

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        SqliteConnection.ClearAllPools();
    }
}
