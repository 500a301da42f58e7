using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>A practice on its first morning.</summary>
public sealed class EmptyPractice : KeptPractice
{
    protected override Task<Actor> FoundAsync(IServiceProvider services) =>
        services.GetRequiredService<EnsureLocalPractice>().RunAsync(new LocalPractice("Ford Practice", "Mara Holt", "Europe/Vienna", "en"));
}
