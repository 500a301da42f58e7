using System.Reflection;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Rights;
using RehabTrack.Records.Room;
using RehabTrack.Records.Start;

namespace RehabTrack.Records.Tests.EveryCommand;

/// <summary>A use case asked by its type alone, and what it answered.</summary>
/// <param name="Value">What it answered; null when it had problems.</param>
/// <param name="Problems">Its problems.</param>
internal sealed record Asked(object? Value, IReadOnlyList<Problem> Problems)
{
    /// <summary>Every command there is.</summary>
    public static IReadOnlyList<Type> Commands { get; } = [.. RecordsServices.UseCases().Where(IsCommand)];

    public static Type InputOf(Type useCase) => useCase.GetMethod("ExecuteAsync")!.GetParameters()[1].ParameterType;

    public static async Task<Asked> AskAsync(Scene scene, Type useCase, object input, Actor? actor = null)
    {
        MethodInfo way = useCase.GetMethod("ExecuteAsync")!;
        Task asked = (Task)way.Invoke(scene.House.Get(useCase), [actor ?? scene.Vet, input, CancellationToken.None])!;
        await asked;
        object outcome = asked.GetType().GetProperty("Result")!.GetValue(asked)!;
        return new Asked(
            outcome.GetType().GetProperty("ValueOrDefault")!.GetValue(outcome),
            (IReadOnlyList<Problem>)outcome.GetType().GetProperty("Problems")!.GetValue(outcome)!
        );
    }

    private static bool IsCommand(Type type)
    {
        for (Type? current = type.BaseType; current is not null; current = current.BaseType)
        {
            if (current.IsGenericType && current.GetGenericTypeDefinition() == typeof(Command<,>))
            {
                return true;
            }
        }

        return false;
    }
}
