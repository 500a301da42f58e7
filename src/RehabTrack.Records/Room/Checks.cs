using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Records.Room;

/// <summary>Gathers what is wrong with an input, all at once.</summary>
internal sealed class Checks
{
    private const int LongestName = 200;
    private const int LongestText = 4000;
    private readonly List<Problem> problems = [];

    public List<Problem> Problems => problems;

    public bool Any => problems.Count > 0;

    public void Add(Problem problem) => problems.Add(problem);

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
        if (phone is not null && phone.Count(char.IsAsciiDigit) < 3)
        {
            problems.Add(new(field, "phone-unreadable", phone));
        }

        return phone;
    }

    /// <summary>A mail address: something, an at sign, something with a point.</summary>
    public string? Mail(string field, string? text)
    {
        string? mail = Line(field, text);
        if (mail is null)
        {
            return null;
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

    private void Length(string field, string text, int longest)
    {
        if (text.Length > longest)
        {
            problems.Add(new(field, "text-too-long", RecordText.Of(text.Length), RecordText.Of(longest)));
        }
    }
}
