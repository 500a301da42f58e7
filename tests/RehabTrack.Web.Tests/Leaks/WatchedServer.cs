using RehabTrack.Web.Tests.Hosting;

namespace RehabTrack.Web.Tests.Leaks;

/// <summary>A server whose questions to the database are heard from the first: the framework looks only now and then whether somebody listens.</summary>
public sealed class WatchedServer : IAsyncLifetime
{
    internal ReadCells Read { get; } = new();

    public RunningApp App { get; } = new();

    public Task InitializeAsync() => App.InitializeAsync();

    public async Task DisposeAsync()
    {
        await App.DisposeAsync();
        Read.Dispose();
    }
}
