using System.Globalization;

namespace RehabTrack.Exchange.Rows;

/// <summary>Reads the dates of a sheet.</summary>
public static class SheetDate
{
    private static readonly string[] Iso = ["yyyy-MM-dd"];

    private static readonly string[] IsoMidnight =
    [
        "yyyy-MM-dd'T'HH:mm",
        "yyyy-MM-dd'T'HH:mm:ss",
        "yyyy-MM-dd HH:mm",
        "yyyy-MM-dd HH:mm:ss",
    ];

    private static readonly string[] DayFirst =
    [
        .. Marks("d{0}M{0}yyyy"),
        .. Marks("d{0}M{0}yy"),
        .. Words("d MMM yyyy", "d MMMM yyyy", "d MMM yy"),
    ];

    private static readonly string[] MonthFirst =
    [
        .. Marks("M{0}d{0}yyyy"),
        .. Marks("M{0}d{0}yy"),
        .. Words("MMM d yyyy", "MMMM d yyyy", "MMM d, yyyy", "MMMM d, yyyy"),
    ];

    private static readonly CultureInfo Reading = CreateCulture();

    /// <summary>
    /// The date of a cell; null when it is none. ISO dates are read in every order, also with a time of midnight behind them, as
    /// spreadsheets write it; another time is refused. The other orders are read only where a mapping says so; years of two digits mean
    /// 1950 to 2049.
    /// </summary>
    /// <param name="text">The cell.</param>
    /// <param name="order">The order that the sheet uses.</param>
    public static DateOnly? Read(string text, DateOrder order)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (ReadPlain(text) is { } plain)
        {
            return plain;
        }

        if (DateOnly.TryParseExact(text, Iso, Reading, DateTimeStyles.None, out DateOnly date))
        {
            return date;
        }

        if (DateTime.TryParseExact(text, IsoMidnight, Reading, DateTimeStyles.None, out DateTime instant))
        {
            return instant.TimeOfDay == TimeSpan.Zero ? DateOnly.FromDateTime(instant) : null;
        }

        string[]? formats = order switch
        {
            DateOrder.Iso => null,
            DateOrder.DayMonthYear => DayFirst,
            DateOrder.MonthDayYear => MonthFirst,
        };
        return formats is not null && DateOnly.TryParseExact(text, formats, Reading, DateTimeStyles.AllowWhiteSpaces, out date)
            ? date
            : null;
    }

    // Nearly every date of nearly every sheet; anything else about it is asked of the general reading.
    private static DateOnly? ReadPlain(ReadOnlySpan<char> text) =>
        text is [_, _, _, _, '-', _, _, '-', _, _]
        && int.TryParse(text[..4], NumberStyles.None, CultureInfo.InvariantCulture, out int year)
        && int.TryParse(text[5..7], NumberStyles.None, CultureInfo.InvariantCulture, out int month)
        && int.TryParse(text[8..], NumberStyles.None, CultureInfo.InvariantCulture, out int day)
        && year > 0
        && month is >= 1 and <= 12
        && day >= 1
        && day <= DateTime.DaysInMonth(year, month)
            ? new DateOnly(year, month, day)
            : null;

    private static IEnumerable<string> Marks(string format) =>
        new[] { ".", "/", "-", ". " }.Select(mark => string.Format(CultureInfo.InvariantCulture, format, mark is "/" ? "'/'" : mark));

    private static IEnumerable<string> Words(params string[] formats) =>
        formats
            .SelectMany(format => new[] { format, format.Replace("MMM ", "MMM'.' ", StringComparison.Ordinal) })
            .Distinct(StringComparer.Ordinal);

    private static CultureInfo CreateCulture()
    {
        CultureInfo culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.DateTimeFormat.Calendar.TwoDigitYearMax = 2049;
        return CultureInfo.ReadOnly(culture);
    }
}
