using RehabTrack.Rechecks.Quantities;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Forms;

/// <summary>Reads the numbers of a form, and says beside its field what cannot be read.</summary>
public sealed class FormNumbers
{
    private readonly Dictionary<string, string> _unreadable = new(StringComparer.Ordinal);

    /// <summary>Whether a text was no number.</summary>
    public bool Any => _unreadable.Count > 0;

    /// <summary>Forgets what was wrong before.</summary>
    public void Clear() => _unreadable.Clear();

    /// <summary>The number of a text, with decimal point or comma; null when it is blank, or no number.</summary>
    /// <param name="field">The field, as problems name it.</param>
    /// <param name="text">What was typed.</param>
    public double? Read(string field, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (DecimalText.TryRead(text.Trim(), out double value, out string? code))
        {
            return value;
        }

        _unreadable[field] = ProblemSentences.Of(new Problem(field, code!, text));
        return null;
    }

    /// <summary>What is wrong with the text of a field; null when it could be read.</summary>
    public string? For(string field) => _unreadable.GetValueOrDefault(field);
}
