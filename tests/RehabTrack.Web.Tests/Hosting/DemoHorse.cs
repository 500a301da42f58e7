using Microsoft.Extensions.DependencyInjection;
using RehabTrack.Records.Exercise;
using RehabTrack.Records.Horses;

namespace RehabTrack.Web.Tests.Hosting;

/// <summary>A horse of the demo, by its name.</summary>
public static class DemoHorse
{
    public static async Task<ExerciseView> ViewAsync(KeptPractice practice, string name)
    {
        ArgumentNullException.ThrowIfNull(practice);
        HorsePage found = (
            await practice.Services.GetRequiredService<FindHorses>().ExecuteAsync(practice.Vet, new FindHorsesInput { Query = name })
        ).Value;
        return (await practice.Services.GetRequiredService<GetExercise>().ExecuteAsync(practice.Vet, found.Rows[0].Id)).Value;
    }
}
