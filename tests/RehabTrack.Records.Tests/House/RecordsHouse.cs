using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;

namespace RehabTrack.Records.Tests.House;

/// <summary>A practice on a real database file in a folder of its own, at a time that stands still until it is moved.</summary>
internal sealed class RecordsHouse : IAsyncDisposable
{
    /// <summary>A founded practice's database, migrated once for all houses: each begins with a copy of it.</summary>
    private static readonly Lazy<Task<byte[]>> Founded = new(FoundAsync);

    private readonly ServiceProvider services;
    private readonly bool keepFolder;

    private RecordsHouse(ServiceProvider services, string folder, FakeTimeProvider time, bool keepFolder)
    {
        this.services = services;
        this.keepFolder = keepFolder;
        Folder = folder;
        Time = time;
    }

    public string Folder { get; }

    public FakeTimeProvider Time { get; }

    public Actor Vet { get; private set; } = null!;

    public string Database => Path.Combine(Folder, DataFolder.DatabaseName);

    public static async Task<RecordsHouse> BuildAsync(string? folder = null)
    {
        RecordsHouse house = Closed(folder);
        if (Directory.Exists(house.Folder) && !File.Exists(house.Database))
        {
            await File.WriteAllBytesAsync(house.Database, await Founded.Value);
        }

        return await house.StartAsync();
    }

    private static async Task<byte[]> FoundAsync()
    {
        await using RecordsHouse house = await Closed().StartAsync();
        SqliteConnection.ClearAllPools();
        return await File.ReadAllBytesAsync(house.Database);
    }

    private async Task<RecordsHouse> StartAsync()
    {
        await Get<SqliteStart>().RunAsync();
        IReadOnlyList<Actor> people = await Get<SignInDoor>().ListAsync();
        Vet = people is [Actor first, ..]
            ? first
            : await FoundPractice.RunAsync(
                Get<RecordsAccess>(),
                Founding("Hollin Down Horse Practice", "Europe/Vienna", "Edda Marrow"),
                default
            );
        return this;
    }

    /// <summary>The services on a folder, before anything was started.</summary>
    public static RecordsHouse Closed(string? folder = null, TimeProvider? clock = null)
    {
        string path = folder ?? Directory.CreateTempSubdirectory("rehabtrack-records-").FullName;
        FakeTimeProvider time = new(new DateTimeOffset(2026, 11, 24, 9, 0, 0, TimeSpan.Zero));
        ServiceCollection registered = new();
        registered.AddSingleton<TimeProvider>(clock ?? time);
        registered.AddRecords();
        registered.AddSqliteRecords(path);
        return new RecordsHouse(registered.BuildServiceProvider(), path, time, folder is not null);
    }

    public T Get<T>()
        where T : notnull => services.GetRequiredService<T>();

    public object Get(Type type) => services.GetRequiredService(type);

    /// <summary>Looks straight into the tables of a practice.</summary>
    public async Task<T> LookAsync<T>(Func<RecordsContext, Task<T>> look, Guid? practiceId = null)
    {
        await using RecordsContext records = await Get<RecordsAccess>().OpenAsync(practiceId ?? Vet.PracticeId, null, default);
        return await look(records);
    }

    /// <summary>A second practice in the same database, with a vet of its own.</summary>
    public Task<Actor> FoundSecondPracticeAsync() =>
        FoundPractice.RunAsync(Get<RecordsAccess>(), Founding("Other Shore Equine", "Europe/London", "Runa Tolland"), default);

    private static FoundPractice.Founding Founding(string practice, string timeZone, string vet) =>
        new(Guid.NewGuid(), "Test", practice, null, timeZone, "en", vet, null, null, "{}");

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        SqliteConnection.ClearAllPools();
        if (!keepFolder)
        {
            Directory.Delete(Folder, recursive: true);
        }
    }
}
