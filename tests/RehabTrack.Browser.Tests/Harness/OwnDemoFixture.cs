namespace RehabTrack.Browser.Tests.Harness;

/// <summary>A demo for one class of tests that writes into it.</summary>
public sealed class OwnDemoFixture : IAsyncLifetime
{
    private readonly DemoFixture _demo = new();

    public RunningApp App => _demo.App;

    /// <inheritdoc />
    public Task InitializeAsync() => _demo.InitializeAsync();

    /// <inheritdoc />
    public Task DisposeAsync() => _demo.DisposeAsync();
}
