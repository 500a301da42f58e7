using RehabTrack.Records.Rights;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>A practice on its first morning.</summary>
public sealed class EmptyPractice : KeptPractice
{
    protected override Task<Actor> FoundAsync(IServiceProvider services) => FirstVet.FoundAsync(services);
}
