using System.Diagnostics.CodeAnalysis;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The journeys share one Chromium and one demo, and run one after another, beside the pages.</summary>
[CollectionDefinition(Name)]
[SuppressMessage("Naming", "CA1711", Justification = "It is the definition of a test collection.")]
public sealed class BrowserCollection : ICollectionFixture<ChromiumFixture>, ICollectionFixture<DemoFixture>
{
    public const string Name = "browser";
}
