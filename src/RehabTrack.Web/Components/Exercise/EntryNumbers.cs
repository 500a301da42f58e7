using System.Globalization;
using RehabTrack.Wording;

namespace RehabTrack.Web.Components.Exercise;

/// <summary>Reads whole numbers as they are typed, and keeps beside its field what cannot be read.</summary>
public sealed class EntryNumbers
{
    private readonly List<(string Field, string Sentence)> _unreadable = [];

    /// <summary>Whether something could not be read.</summary>
    public bool Any => _unreadable.Count > 0;

    /// <summary>How many texts could not be read.</summary>
    public int Count => _unreadable.Count;

    /// <summary>How many texts of the fields that begin so could not be read.</summary>
    /// <param name="field">How the fields begin.</param>
    public int CountIn(string field) => _unreadable.Count(one => one.Field.StartsWith(field, StringComparison.Ordinal));

    /// <summary>A whole number as a field shows it; empty for none.</summary>
    public static string Text(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    /// <summary>The number of a text; null when it is blank, or no whole number.</summary>
    /// <param name="field">The field, as problems name it.</param>
    /// <param name="text">What was typed.</param>
    public int? Read(string field, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (int.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number))
        {
            return number;
        }

        Add(field, string.Format(TextCulture.Default, ExerciseTexts.NotWhole, text.Trim()));
        return null;
    }

    /// <summary>Says that a field cannot be read.</summary>
    public void Add(string field, string sentence) => _unreadable.Add((field, sentence));

    /// <summary>What is wrong with a field; null when it could be read.</summary>
    public string? For(string field) =>
        string.Join(" ", _unreadable.Where(one => one.Field == field).Select(one => one.Sentence)) is { Length: > 0 } told ? told : null;
}
