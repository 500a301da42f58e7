using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>A practice with its first vet, for what comes after the first run.</summary>
internal static class FirstVet
{
    /// <summary>Founds it, and nothing else.</summary>
    public static Task<Actor> FoundAsync(IServiceProvider services) =>
        FoundPractice.RunAsync(
            services.GetRequiredService<RecordsAccess>(),
            new FoundPractice.Founding(Guid.NewGuid(), "Test", "Ford Practice", null, "Europe/Vienna", "en", "Mara Holt", null, null, "{}"),
            default
        );

    /// <summary>Goes through the first run with it, so that the server asks for names and passwords.</summary>
    public static async Task<Actor> SetUpAsync(IServiceProvider services) =>
        (
            await services
                .GetRequiredService<SetUpDoor>()
                .RunAsync(
                    new FirstPractice("Ford Practice", null, "Europe/Vienna", "en", "Mara Holt", Role.Vet),
                    new AccountChoice("mara", "no hash")
                )
        ).Value;
}
