using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Start;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>The demo's practice with its stories.</summary>
public sealed class DemoPracticeAtHand : KeptPractice
{
    protected override Task<Actor> FoundAsync(IServiceProvider services)
    {
        DemoDefinition demo = DemoSeed.Definition();
        return services.GetRequiredService<LoadDemo>().RunAsync(demo, DemoSeed.Cases(demo), DemoSeed.Plans());
    }
}
