using RehabTrack.Rechecks.Suggestions;

namespace RehabTrack.Web.Features.Plans;

/// <summary>One field of a plan or of a step, as it is typed.</summary>
/// <typeparam name="T">What it is a field of.</typeparam>
/// <param name="Name">What people call it.</param>
/// <param name="Text">What is typed; empty for nothing. Equal texts are equal fields.</param>
/// <param name="Copy">Gives the first what the second has.</param>
internal sealed record PlanField<T>(string Name, Func<T, string> Text, Action<T, T> Copy)
{
    /// <summary>What is typed, in words; the text itself where nothing else is said.</summary>
    public Func<T, RuleSettings, string> Words { get; init; } = (of, _) => Text(of);

    /// <summary>The fields that a tick opens; none for a field of its own.</summary>
    public IReadOnlyList<PlanField<T>> Parts { get; private init; } = [];

    /// <summary>A tick with the fields that it opens. Without it they say nothing, so they are one field where the tick is not set everywhere.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="read">Whether the tick is set.</param>
    /// <param name="write">Sets or takes the tick.</param>
    /// <param name="parts">The fields.</param>
    public static PlanField<T> Opening(string name, Func<T, bool> read, Action<T, bool> write, IReadOnlyList<PlanField<T>> parts) =>
        new(
            name,
            of => read(of) ? string.Join('\n', parts.Select(part => part.Text(of)).Prepend(name)) : "",
            (to, from) =>
            {
                write(to, read(from));
                foreach (PlanField<T> part in parts)
                {
                    part.Copy(to, from);
                }
            }
        )
        {
            Parts = parts,
            Words = (of, rules) =>
                read(of)
                    ? string.Join(
                        "; ",
                        parts
                            .Where(part => part.Text(of).Length > 0)
                            .Select(part => $"{part.Name}: {part.Words(of, rules)}")
                            .DefaultIfEmpty(name)
                    )
                    : "",
        };
}
