using RehabTrack.Rechecks.Permits;
using RehabTrack.Records.Exercise;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>A concern in words.</summary>
public static class ConcernWords
{
    /// <summary>The signs and what was said, as "Heat slight: warm behind".</summary>
    /// <param name="line">The line that opened it.</param>
    public static string SaidOf(ExerciseLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string signs = line.Entry is DayLogged { Log: var log } ? SignWords.Of(log) : "";
        string said = line.Words?.Words ?? "";
        string[] parts = [.. new[] { signs, said }.Where(part => part.Length > 0)];
        return Names.AsTitle(parts.Length == 0 ? ExerciseTexts.NoWords : string.Join(": ", parts));
    }

    /// <summary>Who reported it, and for whom.</summary>
    /// <param name="line">The line that opened it.</param>
    public static string ByOf(ExerciseLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.OnBehalfOf is { } other
            ? string.Format(TextCulture.Default, ExerciseTexts.ConcernFor, line.EnteredBy, other)
            : string.Format(TextCulture.Default, ExerciseTexts.ConcernBy, line.EnteredBy);
    }
}
