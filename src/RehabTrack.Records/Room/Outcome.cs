using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>What a use case answers: a value with cautions, or all problems at once.</summary>
/// <typeparam name="T">The value.</typeparam>
public sealed record Outcome<T>
{
    private Outcome(T? value, IReadOnlyList<Problem> problems, IReadOnlyList<Problem> cautions)
    {
        ValueOrDefault = value;
        Problems = problems;
        Cautions = cautions;
    }

    /// <summary>What a person must mend; empty when it succeeded.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>What to mind although it succeeded.</summary>
    public IReadOnlyList<Problem> Cautions { get; }

    /// <summary>Whether there is a value.</summary>
    public bool Succeeded => Problems.Count == 0;

    /// <summary>The value, or the default when there are problems.</summary>
    public T? ValueOrDefault { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There are problems instead.</exception>
    public T Value =>
        Succeeded
            ? ValueOrDefault!
            : throw new InvalidOperationException(
                $"There is no value: {string.Join("; ", Problems.Select(problem => $"{problem.Field}: {problem.Code}"))}."
            );

    /// <summary>A success.</summary>
    public static implicit operator Outcome<T>(T value) => new(value, [], []);

    /// <summary>One problem.</summary>
    public static implicit operator Outcome<T>(Problem problem) => new(default, [problem], []);

    /// <summary>Problems.</summary>
    public static implicit operator Outcome<T>(List<Problem> problems) => Failed(problems);

    internal static Outcome<T> Of(T value, IReadOnlyList<Problem> cautions) => new(value, [], cautions);

    internal static Outcome<T> Failed(IReadOnlyList<Problem> problems) =>
        problems.Count > 0 ? new(default, problems, []) : throw new ArgumentException("A failure needs a problem.", nameof(problems));
}
