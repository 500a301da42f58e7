using RehabTrack.Rechecks.Quantities;
using RehabTrack.Records.Room;

namespace RehabTrack.Drills.Disk;

/// <summary>Something to be written, with a command id of its own, so that it can be asked again.</summary>
/// <param name="What">In a word.</param>
/// <param name="TryAsync">Asks for it; what was told when it was not done.</param>
/// <param name="WrongAsync">What is wrong with what is kept, given whether it was acknowledged; null when nothing is.</param>
internal sealed record Wish(string What, Func<Task<IReadOnlyList<Problem>>> TryAsync, Func<bool, Task<string?>> WrongAsync)
{
    /// <summary>A use case asked for something.</summary>
    public static Func<Task<IReadOnlyList<Problem>>> Of<TInput, TResult>(
        DrillHouse house,
        UseCase<TInput, TResult> useCase,
        TInput input
    ) => async () => (await useCase.ExecuteAsync(house.Vet, input)).Problems;
}
