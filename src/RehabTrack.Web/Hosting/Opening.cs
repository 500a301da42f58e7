using RehabTrack.Records.Sqlite;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Hosting;

/// <summary>What is done once before the server answers: the database made ready, and the demo told.</summary>
public static class Opening
{
    /// <summary>Does it.</summary>
    /// <exception cref="StartException">The database cannot be used.</exception>
    public static async Task RunAsync(IServiceProvider services, StartOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(services);
        ArgumentNullException.ThrowIfNull(options);
        await services.GetRequiredService<SqliteStart>().RunAsync(cancellation);
        if (options.IsDemo)
        {
            DemoDefinition demo = DemoSeed.Definition();
            await services.GetRequiredService<LoadDemo>().RunAsync(demo, DemoSeed.Cases(demo), DemoSeed.Plans(), cancellation);
        }
    }
}
