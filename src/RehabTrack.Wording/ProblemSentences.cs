using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording;

/// <summary>The sentence of a problem: what is wrong, and how to mend it. Its text stands in Problems.resx under the problem's code.</summary>
public static class ProblemSentences
{
    /// <summary>The sentence of a problem. A code without a text, which a test rules out, still yields a sentence that names the code.</summary>
    public static string Of(Problem problem, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        CultureInfo wanted = culture ?? TextCulture.Default;
        // A text that wants more than the problem gives reads with a gap; it must not fail before a person.
        object[] arguments = [.. problem.Arguments, "", "", "", ""];
        return Find(problem.Code, wanted) is { } text
            ? string.Format(wanted, text, arguments)
            : string.Format(wanted, Problems.unnamed_problem, problem.Code);
    }

    /// <summary>Whether there is a text for a code.</summary>
    public static bool Has(string code) => Find(code, TextCulture.Default) is not null;

    private static string? Find(string code, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(code);
        return Problems.ResourceManager.GetString(code.Replace('-', '_'), culture);
    }
}
