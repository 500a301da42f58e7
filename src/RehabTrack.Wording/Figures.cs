using System.Globalization;
using RehabTrack.Rechecks.Anatomy;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording;

/// <summary>
/// Figures and dates as pages and paper show them: the unit always shown after a non-breaking space, a real minus sign, a fixed number of
/// decimals for each quantity so that columns align. A figure that is not known is an en dash, or the word that the caller gives.
/// </summary>
public static class Figures
{
    private const string Minus = "\u2212";

    // Two examinations a day apart make rates of a hundred digits, which say no more than this.
    private const double LargestPercent = 999;

    /// <summary>
    /// A level, on the tape <c>24.5 cm</c> or by zone <c>zone 2B</c>: the one place that decides how a level is told, so that a zone never
    /// reads as a length.
    /// </summary>
    public static string Level(Level? level, string? absent = null, CultureInfo? culture = null) =>
        level?.Zone is { } zone
            ? Filled(FigureTexts.Zone, zone.Name, culture)
            : Of(level?.OnTape?.Value, "0.#", FigureTexts.Centimetres, absent, culture);

    /// <summary>A level without its unit, for a scale whose heading carries the unit: <c>24.5</c>, <c>2B</c>.</summary>
    public static string LevelNumber(Level level, CultureInfo? culture = null) =>
        level.Zone is { } zone ? zone.Name : Number(level.Position.Value, "0.#", culture);

    /// <summary>A thickness or width: <c>0.82 cm</c>.</summary>
    public static string Length(Centimetres? length, string? absent = null, CultureInfo? culture = null) =>
        Of(length?.Value, "0.00", FigureTexts.Centimetres, absent, culture);

    /// <summary>A shift of the tape, with its sign: <c>+0.6 cm</c>.</summary>
    public static string Shift(Centimetres? shift, string? absent = null, CultureInfo? culture = null) =>
        shift is { } known ? Filled(FigureTexts.Centimetres, Signed(known.Value, "0.0", culture), culture) : Absent(absent);

    /// <summary>An area: <c>1.50 cm²</c>.</summary>
    public static string Area(SquareCentimetres? area, string? absent = null, CultureInfo? culture = null) =>
        Of(area?.Value, "0.00", FigureTexts.SquareCentimetres, absent, culture);

    /// <summary>A volume: <c>2.02 cm³</c>.</summary>
    public static string Volume(CubicCentimetres? volume, string? absent = null, CultureInfo? culture = null) =>
        Of(volume?.Value, "0.00", FigureTexts.CubicCentimetres, absent, culture);

    /// <summary>A share, rounded to whole percent: <c>36 %</c>.</summary>
    public static string Percent(Percent? percent, string? absent = null, CultureInfo? culture = null) =>
        percent is { } known ? Capped(known.Value, shown => Of(shown, "0", FigureTexts.Percent, absent, culture), culture) : Absent(absent);

    /// <summary>A share with one decimal, where a class border is near: <c>11.4 %</c>.</summary>
    public static string ExactPercent(Percent? percent, string? absent = null, CultureInfo? culture = null) =>
        Of(percent?.Value, "0.0", FigureTexts.Percent, absent, culture);

    /// <summary>A change in percent with its sign: <c>+2 %</c>, <c>−14 %</c>, <c>0 %</c>; <c>over +999 %</c> beyond.</summary>
    public static string SignedPercent(double? percent, string? absent = null, CultureInfo? culture = null) =>
        percent is { } known
            ? Capped(known, shown => Filled(FigureTexts.Percent, Signed(shown, "0", culture), culture), culture)
            : Absent(absent);

    /// <summary>An error on both sides: <c>± 16 %</c>. The sign of the argument does not matter.</summary>
    public static string PlusMinusPercent(double? percent, string? absent = null, CultureInfo? culture = null) =>
        percent is { } known
            ? Capped(
                Math.Abs(known),
                shown => Filled(FigureTexts.PlusMinus, Filled(FigureTexts.Percent, Number(shown, "0", culture), culture), culture),
                culture
            )
            : Absent(absent);

    /// <summary>A grade without its scale: <c>2</c>.</summary>
    public static string GradeNumber(Grade? grade, string? absent = null, CultureInfo? culture = null) =>
        grade is null ? Absent(absent) : Number(grade.Value, "0", culture);

    /// <summary>A grade with its scale: <c>2 (scale 0 to 3)</c>.</summary>
    public static string Grade(Grade? grade, string? absent = null, CultureInfo? culture = null) =>
        grade is null
            ? Absent(absent)
            : string.Format(culture ?? TextCulture.Default, FigureTexts.Grade, grade.Value, grade.Scale.Lowest, grade.Scale.Highest);

    /// <summary>A date: <c>9 Jul 2026</c>.</summary>
    public static string Date(DateOnly? date, string? absent = null, CultureInfo? culture = null) =>
        date is { } known ? known.ToString("d\u00a0MMM\u00a0yyyy", culture ?? TextCulture.Default) : Absent(absent);

    /// <summary>A date whose year is plain from its surroundings: <c>9 Jul</c>.</summary>
    public static string ShortDate(DateOnly? date, string? absent = null, CultureInfo? culture = null) =>
        date is { } known ? known.ToString("d\u00a0MMM", culture ?? TextCulture.Default) : Absent(absent);

    /// <summary>A number of days: <c>1 day</c>, <c>57 days</c>.</summary>
    public static string Days(int? days, string? absent = null, CultureInfo? culture = null) =>
        days switch
        {
            null => Absent(absent),
            1 => FigureTexts.OneDay,
            { } known => Filled(FigureTexts.Days, Number(known, "0", culture), culture),
        };

    /// <summary>A day counted from a first one: <c>day 57</c>.</summary>
    public static string DayNumber(int day, CultureInfo? culture = null) =>
        Filled(FigureTexts.DayNumber, Number(day, "0", culture), culture);

    /// <summary>A stretch of time: <c>12 Jan 2026 to 8 Sep 2026</c>.</summary>
    public static string Dates(DateOnly from, DateOnly to, CultureInfo? culture = null) =>
        string.Format(culture ?? TextCulture.Default, FigureTexts.DateRange, Date(from, null, culture), Date(to, null, culture));

    /// <summary>An interval in percent: <c>−22 % to −14 %</c>.</summary>
    public static string SignedPercents(double from, double to, CultureInfo? culture = null) =>
        string.Format(
            culture ?? TextCulture.Default,
            FigureTexts.Range,
            SignedPercent(from, null, culture),
            SignedPercent(to, null, culture)
        );

    /// <summary>A plain number in a .NET format, with a real minus sign and never a minus before a zero.</summary>
    public static string Number(double value, string format, CultureInfo? culture = null)
    {
        CultureInfo wanted = culture ?? TextCulture.Default;
        string magnitude = Math.Abs(value).ToString(format, wanted);
        return value < 0 && HasDigitAboveZero(magnitude) ? Minus + magnitude : magnitude;
    }

    private static string Capped(double value, Func<double, string> write, CultureInfo? culture) =>
        Math.Abs(value) <= LargestPercent ? write(value) : Filled(FigureTexts.Over, write(Math.CopySign(LargestPercent, value)), culture);

    private static string Signed(double value, string format, CultureInfo? culture)
    {
        string number = Number(value, format, culture);
        return value > 0 && HasDigitAboveZero(number) ? "+" + number : number;
    }

    private static string Of(double? value, string format, string unit, string? absent, CultureInfo? culture) =>
        value is { } known ? Filled(unit, Number(known, format, culture), culture) : Absent(absent);

    private static string Filled(string text, string argument, CultureInfo? culture) =>
        string.Format(culture ?? TextCulture.Default, text, argument);

    private static string Absent(string? word) => word ?? FigureTexts.Unknown;

    private static bool HasDigitAboveZero(string number) => number.Any(digit => char.IsDigit(digit) && char.GetNumericValue(digit) > 0);
}
