using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>Gathers what is wrong with an input, all at once.</summary>
internal sealed class Checks
{
    /// <summary>The most letters of a line.</summary>
    public const int LongestName = 200;

    /// <summary>The most letters of a text.</summary>
    public const int LongestText = 4000;
    private readonly List<Problem> problems = [];

    public List<Problem> Problems => problems;

    public bool Any => problems.Count > 0;

    public void Add(Problem problem) => problems.Add(problem);

    /// <summary>Adds a problem where there is one.</summary>
    public void Take(Problem? problem)
    {
        if (problem is not null)
        {
            problems.Add(problem);
        }
    }

    public void AddRange(IEnumerable<Problem> more) => problems.AddRange(more);

    /// <summary>The trimmed name; a problem when there is none or it is too long.</summary>
    public string Name(string field, string? text)
    {
        string trimmed = text?.Trim() ?? "";
        if (trimmed.Length == 0)
        {
            problems.Add(new(field, "field-empty"));
        }

        Length(field, trimmed, LongestName);
        return trimmed;
    }

    /// <summary>The trimmed line, or null when empty.</summary>
    public string? Line(string field, string? text) => Optional(field, text, LongestName);

    /// <summary>The trimmed text, or null when empty.</summary>
    public string? Text(string field, string? text) => Optional(field, text, LongestText);

    /// <summary>The trimmed text; a problem when there is none or it is too long.</summary>
    public string Words(string field, string? text)
    {
        string? words = Text(field, text);
        if (words is null)
        {
            problems.Add(new(field, "field-empty"));
        }

        return words ?? "";
    }

    /// <summary>A telephone number: free text with at least three digits.</summary>
    public string? Phone(string field, string? text)
    {
        string? phone = Line(field, text);
        if (phone is { Length: <= LongestName } && phone.Count(char.IsAsciiDigit) < 3)
        {
            problems.Add(new(field, "phone-unreadable", phone));
        }

        return phone;
    }

    /// <summary>A mail address: something, an at sign, something with a point.</summary>
    public string? Mail(string field, string? text)
    {
        string? mail = Line(field, text);
        if (mail is not { Length: <= LongestName })
        {
            return mail;
        }

        int at = mail.IndexOf('@', StringComparison.Ordinal);
        int point = mail.LastIndexOf('.');
        if (at < 1 || mail.IndexOf('@', at + 1) >= 0 || point < at + 2 || point == mail.Length - 1 || mail.Any(char.IsWhiteSpace))
        {
            problems.Add(new(field, "mail-unreadable", mail));
        }

        return mail;
    }

    /// <summary>The trimmed text as it would be kept, unchecked.</summary>
    public static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private string? Optional(string field, string? text, int longest)
    {
        string? trimmed = Trimmed(text);
        if (trimmed is not null)
        {
            Length(field, trimmed, longest);
        }

        return trimmed;
    }

    /// <summary>What keeps a text from being kept letter by letter; null when nothing does.</summary>
    public static Problem? Unkeepable(string field, string? text, int longest)
    {
        if (text is null)
        {
            return null;
        }

        return text.Length > longest ? new(field, "text-too-long", RecordText.Of(text.Length), RecordText.Of(longest))
            : HasBrokenLetter(text) ? new(field, "text-has-broken-letter")
            : null;
    }

    private void Length(string field, string text, int longest)
    {
        if (Unkeepable(field, text, longest) is { } problem)
        {
            problems.Add(problem);
        }
    }

    private static bool IsWhole(string text, int at) => at + 1 < text.Length && char.IsSurrogatePair(text[at], text[at + 1]);

    // A database ends a text at a NUL, and half a letter of two halves has no bytes.
    private static bool HasBrokenLetter(string text)
    {
        for (int at = 0; at < text.Length; at++)
        {
            if (text[at] == '\0' || (char.IsSurrogate(text[at]) && !IsWhole(text, at)))
            {
                return true;
            }

            at += char.IsHighSurrogate(text[at]) ? 1 : 0;
        }

        return false;
    }
}
