using CsCheck;
using RehabTrack.Web.Features.Examinations.Worksheets;
using RehabTrack.Wording;

namespace RehabTrack.Web.Tests.Features.Examinations;

public sealed class VisitDateTests
{
    private static readonly DateOnly Today = new(2026, 9, 8);

    [Theory]
    [InlineData("2026-07-09")]
    [InlineData("20260709")]
    [InlineData("9.7.2026")]
    [InlineData("09.07.26")]
    [InlineData("9.7.")]
    [InlineData("9/7")]
    [InlineData("9 jul")]
    [InlineData("9. July")]
    [InlineData("9th July 2026")]
    [InlineData("9-Jul-26")]
    [InlineData("Jul 9")]
    [InlineData("July 9, 2026")]
    public void The_ninth_of_july_is_understood_in_many_hands(string typed) =>
        Assert.Equal(new DateOnly(2026, 7, 9), VisitDate.Parse(typed, Today));

    [Theory]
    [InlineData("today", "2026-09-08")]
    [InlineData("Yesterday", "2026-09-07")]
    [InlineData("24 dec", "2025-12-24")]
    [InlineData("8.9", "2026-09-08")]
    [InlineData("9.9", "2025-09-09")]
    [InlineData("29.2", "2024-02-29")]
    [InlineData("3 sept", "2026-09-03")]
    public void Without_a_year_it_is_the_latest_such_day_up_to_today(string typed, string iso) =>
        Assert.Equal(iso, VisitDate.Parse(typed, Today)?.ToString("O", TextCulture.Default));

    [Theory]
    [InlineData("")]
    [InlineData("31.6.2026")]
    [InlineData("2026-13-01")]
    [InlineData("0.7.2026")]
    [InlineData("9 ju")]
    [InlineData("9 foo 2026")]
    [InlineData("soon")]
    [InlineData("7")]
    [InlineData("9.7.2026 10:00")]
    public void What_is_no_date_is_none(string typed) => Assert.Null(VisitDate.Parse(typed, Today));

    [Fact]
    public void Every_day_written_in_any_of_the_ways_is_read_back() =>
        Gen.Int[new DateOnly(1990, 1, 1).DayNumber, new DateOnly(2099, 12, 31).DayNumber]
            .Select(DateOnly.FromDayNumber)
            .Sample(
                day =>
                    new[] { "yyyy-MM-dd", "d.M.yyyy", "dd/MM/yyyy", "d MMM yyyy", "d MMMM yyyy", "MMMM d, yyyy" }.All(format =>
                        VisitDate.Parse(day.ToString(format, TextCulture.Default), Today) == day
                    ),
                seed: "0000KLqZXb01",
                iter: 500
            );
}
