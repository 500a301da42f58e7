using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;

namespace RehabTrack.Rechecks.Quantities;

/// <summary>Reads a number as people write it: with decimal point or decimal comma.</summary>
public static partial class DecimalText
{
    /// <summary>The problem code of a text that is no number.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>The problem code of a number that could be read in two ways.</summary>
    public const string Ambiguous = "ambiguous-number";

    private const int LongestNumber = 40;
    private static readonly SearchValues<char> Plainest = SearchValues.Create("0123456789.");

    /// <summary>
    /// Reads a number with at most one mark, point or comma, which is the decimal mark. Spaces at the ends are skipped, the minus may be
    /// a hyphen or a real minus sign, an exponent (<c>5E-02</c>) is understood. A text with two marks (<c>1.234,5</c>, <c>1,234.5</c>)
    /// is refused as ambiguous, and so are spaces between digits, units, signs such as <c>&lt;</c>, NaN and infinity.
    /// </summary>
    /// <param name="text">The text; an empty one is no number.</param>
    /// <param name="value">The number; 0 when there is none.</param>
    /// <param name="problemCode"><see cref="NotANumber"/>, <see cref="Ambiguous"/>, or null when it is a number.</param>
    /// <returns>Whether it is a number.</returns>
    public static bool TryRead(string text, out double value, out string? problemCode)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (TryReadPlain(text, out value))
        {
            problemCode = null;
            return true;
        }

        value = 0;
        string trimmed = text.Trim().Replace('\u2212', '-');
        if (trimmed.Length > LongestNumber)
        {
            problemCode = NotANumber;
            return false;
        }

        if (Grouped().IsMatch(trimmed))
        {
            problemCode = Ambiguous;
            return false;
        }

        bool read =
            Plain().IsMatch(trimmed)
            && double.TryParse(trimmed.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
        value = read ? value : 0;
        problemCode = read ? null : NotANumber;
        return read;
    }

    // Digits with at most one point between them, as nearly every cell has it: no rule has anything to say of them.
    private static bool TryReadPlain(ReadOnlySpan<char> text, out double value)
    {
        value = 0;
        return text.Length is > 0 and <= LongestNumber
            && !text.ContainsAnyExcept(Plainest)
            && text.Count('.') <= 1
            && char.IsAsciiDigit(text[0])
            && double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>
    /// Whether the text could be a number with a mark between thousands, such as <c>1.234</c> or <c>1,234</c>: one to three digits, one
    /// mark, three digits. In cm and cm² that reading is absurd; in mm and mm² it is not, and such a text must be refused there.
    /// </summary>
    /// <param name="text">The text.</param>
    public static bool CouldBeThousands(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Thousands().IsMatch(text.Trim());
    }

    [GeneratedRegex(
        @"\A[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]{1,3})?\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Plain();

    [GeneratedRegex(
        @"\A[+-]?[0-9]{1,3}([.,' \u00A0\u202F\u2019][0-9]+)+[.,' \u00A0\u202F\u2019][0-9]*\z",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Grouped();

    [GeneratedRegex(@"\A[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Thousands();
}
