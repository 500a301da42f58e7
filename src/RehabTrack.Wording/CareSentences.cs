using System.Globalization;
using RehabTrack.Rechecks.Care;

namespace RehabTrack.Wording;

/// <summary>Treatments, medicines and signs in words.</summary>
public static class CareSentences
{
    /// <summary>In a word or two: what it is, with the grade of a sign.</summary>
    public static string Short(CareEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        string name = Names.Of(entry.Kind);
        return entry.LamenessAaep is { } grade ? Say(CareTexts.LamenessGraded, name, grade.ToString(CultureInfo.InvariantCulture))
            : CareRules.IsGraded(entry.Kind) ? Say(CareTexts.Graded, name, Names.Of(entry.Grade))
            : name;
    }

    /// <summary>All it says but its days.</summary>
    public static string Of(CareEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return string.Join("; ", new[] { Short(entry), entry.Context, entry.Words }.Where(text => !string.IsNullOrWhiteSpace(text)));
    }

    /// <summary>Its day or days.</summary>
    public static string Days(CareEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Until is { } until && until != entry.From ? Figures.Dates(entry.From, until)
            : entry.Until is null && CareRules.GroupOf(entry.Kind) == CareGroup.Medicine ? Say(CareTexts.Since, Figures.Date(entry.From))
            : Figures.Date(entry.From);
    }

    private static string Say(string text, params object[] arguments) => string.Format(TextCulture.Default, text, arguments);
}
