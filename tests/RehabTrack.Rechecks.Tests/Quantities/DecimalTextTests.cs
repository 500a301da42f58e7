using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Rechecks.Tests.Quantities;

public sealed class DecimalTextTests
{
    [Theory]
    [InlineData("1.5", 1.5)]
    [InlineData("1,5", 1.5)]
    [InlineData(" 20 ", 20)]
    [InlineData(",5", 0.5)]
    [InlineData("5.", 5)]
    [InlineData("+2", 2)]
    [InlineData("-0.25", -0.25)]
    [InlineData("\u22120,25", -0.25)]
    [InlineData("5E-02", 0.05)]
    [InlineData("1,234", 1.234)]
    public void Point_and_comma_are_both_a_decimal_mark(string text, double expected)
    {
        Assert.True(DecimalText.TryRead(text, out double value, out string? code));
        Assert.Equal(expected, value);
        Assert.Null(code);
    }

    [Theory]
    [InlineData("1.234,5", DecimalText.Ambiguous)]
    [InlineData("1,234.5", DecimalText.Ambiguous)]
    [InlineData("1.234.567", DecimalText.Ambiguous)]
    [InlineData("1'234.5", DecimalText.Ambiguous)]
    [InlineData("1 234,5", DecimalText.Ambiguous)]
    [InlineData("", DecimalText.NotANumber)]
    [InlineData(".", DecimalText.NotANumber)]
    [InlineData("1.5 cm", DecimalText.NotANumber)]
    [InlineData("<0.1", DecimalText.NotANumber)]
    [InlineData("NaN", DecimalText.NotANumber)]
    [InlineData("∞", DecimalText.NotANumber)]
    [InlineData("1e999", DecimalText.NotANumber)]
    [InlineData("1..5", DecimalText.NotANumber)]
    [InlineData("١", DecimalText.NotANumber)]
    public void What_is_no_number_or_two_is_refused(string text, string expected)
    {
        Assert.False(DecimalText.TryRead(text, out double value, out string? code));
        Assert.Equal(expected, code);
        Assert.Equal(0, value);
    }

    [Theory]
    [InlineData("1.234", true)]
    [InlineData("12,345", true)]
    [InlineData("0.234", false)]
    [InlineData("1.23", false)]
    [InlineData("1234.567", false)]
    public void One_mark_before_three_digits_could_part_thousands(string text, bool expected) =>
        Assert.Equal(expected, DecimalText.CouldBeThousands(text));
}
