using RehabTrack.Wording;

namespace RehabTrack.Web.Components;

/// <summary>A number with its word, one or many: "1 horse", "2 horses".</summary>
public static class Counted
{
    /// <summary>Horses.</summary>
    public static string Horses(int count) => Of(count, CountTexts.OneHorse, CountTexts.Horses);

    /// <summary>Cases.</summary>
    public static string Cases(int count) => Of(count, CountTexts.OneCase, CountTexts.Cases);

    /// <summary>Examinations.</summary>
    public static string Examinations(int count) => Of(count, CountTexts.OneExamination, CountTexts.Examinations);

    /// <summary>Readings.</summary>
    public static string Readings(int count) => Of(count, CountTexts.OneReading, CountTexts.Readings);

    /// <summary>Rows of a file.</summary>
    public static string Rows(int count) => Of(count, CountTexts.OneRow, CountTexts.Rows);

    /// <summary>The text for one, or the text for many with the number in it.</summary>
    public static string Of(int count, string one, string many) =>
        count == 1 ? one : string.Format(TextCulture.Default, many, Figures.Number(count, "#,0"));
}
