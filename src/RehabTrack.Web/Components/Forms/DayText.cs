using System.Globalization;

namespace RehabTrack.Web.Components.Forms;

/// <summary>A date as it is typed and as addresses carry it: 2026-03-14.</summary>
public static class DayText
{
    private const string Format = "yyyy-MM-dd";

    /// <summary>The date of a text; null when it is none.</summary>
    public static DateOnly? Read(string? text) =>
        DateOnly.TryParseExact(text?.Trim(), Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) ? date : null;

    /// <summary>A date as text; empty without one.</summary>
    public static string Of(DateOnly? date) => date?.ToString(Format, CultureInfo.InvariantCulture) ?? "";
}
