using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>The demo's practice with its stories, loaded once for all tests: each class begins with a copy of it.</summary>
public sealed class DemoPracticeAtHand : KeptPractice
{
    private static readonly Lazy<Task<(byte[] Database, Actor Vet)>> Loaded = new(LoadAsync);

    protected override async Task FillAsync(string folder) =>
        await File.WriteAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName), (await Loaded.Value).Database);

    protected override async Task<Actor> FoundAsync(IServiceProvider services) => (await Loaded.Value).Vet;

    private static async Task<(byte[], Actor)> LoadAsync()
    {
        string folder = Directory.CreateTempSubdirectory("rehabtrack-demo-").FullName;
        await MigratedFolder.FillAsync(folder);
        ServiceCollection services = new();
        Register(services, folder);
        Actor vet;
        await using (ServiceProvider provider = services.BuildServiceProvider())
        {
            await provider.GetRequiredService<SqliteStart>().RunAsync();
            DemoDefinition demo = DemoSeed.Definition();
            vet = await provider.GetRequiredService<LoadDemo>().RunAsync(demo, DemoSeed.Cases(demo), DemoSeed.Plans());
        }

        SqliteConnection.ClearAllPools();
        byte[] database = await File.ReadAllBytesAsync(Path.Combine(folder, DataFolder.DatabaseName));
        Directory.Delete(folder, recursive: true);
        return (database, vet);
    }
}
