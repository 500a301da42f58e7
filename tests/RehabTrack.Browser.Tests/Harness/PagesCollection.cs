using System.Diagnostics.CodeAnalysis;

namespace RehabTrack.Browser.Tests.Harness;

/// <summary>The look at every page has a Chromium and a demo of its own: it works while the journeys wait, and waits for nothing of theirs.</summary>
[CollectionDefinition(Name)]
[SuppressMessage("Naming", "CA1711", Justification = "It is the definition of a test collection.")]
public sealed class PagesCollection : ICollectionFixture<ChromiumFixture>, ICollectionFixture<DemoFixture>
{
    public const string Name = "pages";
}
