using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Wording.Tests;

public sealed class FiguresTests
{
    private const string Space = "\u00a0";

    [Theory]
    [InlineData(24.0, "24_cm")]
    [InlineData(24.5, "24.5_cm")]
    [InlineData(24.04, "24_cm")]
    public void A_level_shows_a_decimal_only_when_it_has_one(double level, string expected) =>
        Assert.Equal(Spaced(expected), Figures.Level(new Centimetres(level)));

    [Fact]
    public void Units_stand_after_a_space_that_does_not_break()
    {
        Assert.Equal(Spaced("1.50_cm²"), Figures.Area(new SquareCentimetres(1.5)));
        Assert.Equal(Spaced("2.02_cm³"), Figures.Volume(new CubicCentimetres(2.018)));
        Assert.Equal(Spaced("0.80_cm"), Figures.Length(new Centimetres(0.8)));
        Assert.Equal(Spaced("36_%"), Figures.Percent(new Percent(36.2)));
        Assert.Equal(Spaced("15.1_%"), Figures.ExactPercent(new Percent(15.1)));
    }

    [Theory]
    [InlineData(2.3, "+2_%")]
    [InlineData(-14.2, "−14_%")]
    [InlineData(-0.4, "0_%")]
    [InlineData(0.4, "0_%")]
    [InlineData(0.0, "0_%")]
    public void A_change_carries_its_sign_and_never_a_minus_before_zero(double change, string expected) =>
        Assert.Equal(Spaced(expected), Figures.SignedPercent(change));

    [Theory]
    [InlineData(999.0, "+999_%")]
    [InlineData(1.2e69, "over +999_%")]
    [InlineData(-1200.0, "over −999_%")]
    public void A_change_beyond_all_measure_is_not_written_out(double change, string expected)
    {
        Assert.Equal(Spaced(expected), Figures.SignedPercent(change));
        Assert.Equal(Spaced("−50_% to over +999_%"), Figures.SignedPercents(-50, 1e30));
        Assert.Equal(Spaced("over ±_999_%"), Figures.PlusMinusPercent(1e30));
        Assert.Equal(Spaced("over 999_%"), Figures.Percent(new Percent(1e30)));
    }

    [Fact]
    public void An_error_stands_on_both_sides() => Assert.Equal(Spaced("±_16_%"), Figures.PlusMinusPercent(-16));

    [Fact]
    public void A_shift_of_the_tape_carries_its_sign()
    {
        Assert.Equal(Spaced("+0.6_cm"), Figures.Shift(new Centimetres(0.62)));
        Assert.Equal(Spaced("−1.0_cm"), Figures.Shift(new Centimetres(-1)));
    }

    [Fact]
    public void What_is_not_known_is_a_dash_or_the_given_word_and_never_zero()
    {
        Assert.Equal("–", Figures.Area(null));
        Assert.Equal("not read", Figures.Percent(null, "not read"));
        Assert.Equal("–", Figures.Date(null));
        Assert.Equal("–", Figures.Grade(null));
        Assert.Equal("–", Figures.SignedPercent(null));
        Assert.Equal("–", Figures.Days(null));
    }

    [Fact]
    public void Dates_have_short_months_of_three_letters()
    {
        DateOnly day = new(2026, 9, 8);
        Assert.Equal(Spaced("8_Sep_2026"), Figures.Date(day));
        Assert.Equal(Spaced("8_Sep"), Figures.ShortDate(day));
        Assert.Equal(Spaced("12_Jan_2026") + " to " + Spaced("8_Sep_2026"), Figures.Dates(new DateOnly(2026, 1, 12), day));
    }

    [Fact]
    public void Days_are_counted_in_words()
    {
        Assert.Equal(Spaced("1_day"), Figures.Days(1));
        Assert.Equal(Spaced("57_days"), Figures.Days(57));
        Assert.Equal(Spaced("day_57"), Figures.DayNumber(57));
    }

    [Fact]
    public void An_interval_names_both_ends() => Assert.Equal(Spaced("−22_% to −14_%"), Figures.SignedPercents(-22.333, -14.4));

    [Fact]
    public void A_grade_names_its_scale()
    {
        Grade grade = new(GradeScales.Echogenicity0To3, 2);
        Assert.Equal("2 (scale 0 to 3)", Figures.Grade(grade));
        Assert.Equal("2", Figures.GradeNumber(grade));
    }

    [Fact]
    public void Another_culture_brings_its_decimal_comma() =>
        Assert.Equal(Spaced("1,50_cm²"), Figures.Area(new SquareCentimetres(1.5), null, CultureInfo.GetCultureInfo("de-DE")));

    private static string Spaced(string text) => text.Replace("_", Space, StringComparison.Ordinal);
}
