using System.Globalization;

namespace RehabTrack.Wording;

/// <summary>The culture that texts are written in where a person has chosen none.</summary>
public static class TextCulture
{
    /// <summary>British English; its short month names have three letters on every machine.</summary>
    public static CultureInfo Default { get; } = Create();

    private static CultureInfo Create()
    {
        CultureInfo culture = (CultureInfo)CultureInfo.GetCultureInfo("en-GB").Clone();
        // System libraries differ over "Sep" and "Sept"; a column of dates wants one width.
        string[] months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec", ""];
        culture.DateTimeFormat.AbbreviatedMonthNames = months;
        culture.DateTimeFormat.AbbreviatedMonthGenitiveNames = months;
        return CultureInfo.ReadOnly(culture);
    }
}
