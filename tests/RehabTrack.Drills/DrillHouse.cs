using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
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

    public T Get<T>()
        where T : notnull => services.GetRequiredService<T>();

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        SqliteConnection.ClearAllPools();
    }
}
