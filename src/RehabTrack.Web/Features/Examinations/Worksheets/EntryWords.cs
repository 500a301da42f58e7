using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Exams;
using RehabTrack.Wording;

namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>The few words a cell takes, and how few letters are enough to name one.</summary>
public static class EntryWords
{
    /// <summary>Parts with their names.</summary>
    public static IReadOnlyList<KeyValuePair<Part, string>> Parts { get; } =
    [.. Enum.GetValues<Part>().Select(part => KeyValuePair.Create(part, Names.Of(part)))];

    /// <summary>Roles of a triplet with their names; the row without a role stays blank.</summary>
    public static IReadOnlyList<KeyValuePair<ReadingRole, string>> Roles { get; } =
    [.. Enum.GetValues<ReadingRole>().Where(role => role != ReadingRole.None).Select(role => KeyValuePair.Create(role, Names.Of(role)))];

    /// <summary>The part that the text names, or null.</summary>
    public static Part? Part(string text) => Find(Parts, text);

    /// <summary>The role that the text names: none when blank, null when it names none of them.</summary>
    public static ReadingRole? Role(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Trim().Length == 0 ? ReadingRole.None : Find(Roles, text);
    }

    /// <summary>The full name for what was typed, or the text itself when it names nothing.</summary>
    public static string Complete(EntryColumn column, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return column switch
        {
            EntryColumn.Part when Part(text) is { } part => Names.Of(part),
            EntryColumn.Role when text.Trim().Length > 0 && Role(text) is { } role => Names.Of(role),
            EntryColumn.LesionArea when IsDiffuse(text) => ExaminationPage.Diffuse,
            _ => text.Trim(),
        };
    }

    /// <summary>Whether the text says that the lesion cannot be outlined.</summary>
    public static bool IsDiffuse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string word = text.Trim();
        return word.Length > 0 && ExaminationPage.Diffuse.StartsWith(word, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>
    /// The one word that is meant: the same letters without regard to case, spaces and hyphens; else the only word that begins so, or
    /// that has a later word beginning so ("above" for "normal above").
    /// </summary>
    private static T? Find<T>(IReadOnlyList<KeyValuePair<T, string>> words, string text)
        where T : struct
    {
        string typed = Plain(text);
        if (typed.Length == 0)
        {
            return null;
        }

        foreach (
            Func<string, bool> means in (Func<string, bool>[])
                [
                    word => Plain(word) == typed,
                    word => Plain(word).StartsWith(typed, StringComparison.Ordinal),
                    word => word.Split(' ', '-').Skip(1).Any(later => Plain(later).StartsWith(typed, StringComparison.Ordinal)),
                ]
        )
        {
            KeyValuePair<T, string>[] found = [.. words.Where(word => means(word.Value))];
            if (found.Length == 1)
            {
                return found[0].Key;
            }
        }

        return null;
    }

    private static string Plain(string text) => new([.. text.ToLowerInvariant().Where(char.IsLetterOrDigit)]);
}
