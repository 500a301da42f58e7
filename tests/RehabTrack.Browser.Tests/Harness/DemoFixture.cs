namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The demo, started once for the tests that only read it.</summary>
public sealed class DemoFixture : IAsyncLifetime
{
    private RunningApp? _app;

    public RunningApp App => _app ?? throw new InvalidOperationException("The demo has not been started.");

    /// <inheritdoc />
    public async Task InitializeAsync() => _app = await RunningApp.StartDemoAsync();

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        if (_app is not null)
        {
            await _app.DisposeAsync();
        }
    }
}
