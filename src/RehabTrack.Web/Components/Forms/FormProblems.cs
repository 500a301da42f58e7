using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Forms;

/// <summary>What is wrong with a form: a sentence beside each field, and above the form whatever belongs to no field of it.</summary>
public sealed class FormProblems
{
    private readonly HashSet<string> _shown = new(StringComparer.Ordinal);
    private IReadOnlyList<Problem> _problems = [];

    /// <summary>Whether there is anything to mend.</summary>
    public bool Any => _problems.Count > 0;

    /// <summary>How many there are.</summary>
    public int Count => _problems.Count;

    /// <summary>Sentences that no field of the form has shown.</summary>
    public IReadOnlyList<string> Elsewhere =>
        [.. _problems.Where(problem => !_shown.Contains(problem.Field)).Select(problem => ProblemSentences.Of(problem))];

    /// <summary>The sentences for a field; null when it is well. Asking makes the field responsible for showing it.</summary>
    public string? For(string field)
    {
        _shown.Add(field);
        string[] sentences = [.. _problems.Where(problem => problem.Field == field).Select(problem => ProblemSentences.Of(problem))];
        return sentences.Length == 0 ? null : string.Join(" ", sentences);
    }

    /// <summary>Takes what a use case said.</summary>
    public void Take(IReadOnlyList<Problem> problems) => _problems = problems;

    /// <summary>Forgets it, before the next attempt.</summary>
    public void Clear() => _problems = [];
}
