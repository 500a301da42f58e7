namespace RehabTrack.Web.Features.Examinations;

/// <summary>Names of persons as a case already writes them, so that one person is not taken for two.</summary>
public static class MeasurerNames
{
    /// <summary>
    /// The name under which the person measured in this case before, where it shortens or lengthens the given one ("I. Penhallick" for
    /// "Ivo Penhallick"); else the name itself. Of two such names none is chosen.
    /// </summary>
    /// <param name="name">The person's name.</param>
    /// <param name="used">The names that the case uses.</param>
    public static string AsBefore(string name, IReadOnlyList<string> used)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(used);
        if (used.Contains(name, StringComparer.Ordinal))
        {
            return name;
        }

        string[] same = [.. used.Where(other => IsSame(name, other))];
        return same is [var only] ? only : name;
    }

    private static bool IsSame(string one, string other)
    {
        string[] first = Words(one);
        string[] second = Words(other);
        return first.Length > 1
            && second.Length == first.Length
            && string.Equals(first[^1], second[^1], StringComparison.OrdinalIgnoreCase)
            && first.Zip(second).All(pair => Begins(pair.First, pair.Second) || Begins(pair.Second, pair.First));
    }

    private static bool Begins(string whole, string part) => whole.StartsWith(part, StringComparison.OrdinalIgnoreCase);

    private static string[] Words(string name) =>
        name.Split([' ', '.', '\u00a0'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
